//! The program: a window, or the commands that need none.

fn main() -> std::process::ExitCode {
    warmfold::headless::main()
}
