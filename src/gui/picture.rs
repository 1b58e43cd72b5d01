//! Pictures of what the window shows, as PNG files or on the clipboard.

use super::exporting::Done;
use super::state::State;
use egui::{Color32, ColorImage, Rect};
use std::path::PathBuf;
use std::sync::mpsc::channel;

impl State {
    /// Takes a picture of the view as it is drawn next.
    pub fn save_picture(&mut self, path: PathBuf, ctx: &egui::Context) {
        self.take_picture(vec![self.view_rect], Some(path), ctx);
    }

    /// Takes a picture of parts of the window, one under the other, as they are drawn next: to a file, else to the
    /// clipboard.
    pub fn take_picture(&mut self, parts: Vec<Rect>, path: Option<PathBuf>, ctx: &egui::Context) {
        let (sender, answer) = channel();
        if !self.begin_export("picture", path.as_deref(), answer) {
            return;
        }
        let (scale, waker) = (ctx.pixels_per_point(), ctx.clone());
        let paper = super::theme::tokens_of(ctx.theme()).paper;
        ctx.request_screenshot(move |image| {
            let done = cut(&image, &parts, scale, paper).and_then(|picture| match &path {
                None => Ok(Done::Picture(picture)),
                Some(path) => {
                    let bytes = png_of(&picture).map_err(|error| error.to_string())?;
                    Done::write(path, &bytes)
                }
            });
            // The window may be gone by then: the file is written all the same.
            let _ = sender.send(done);
            waker.request_repaint();
        });
    }
}

/// The parts of a picture of the window, one under the other on paper.
fn cut(window: &ColorImage, parts: &[Rect], scale: f32, paper: Color32) -> Result<ColorImage, String> {
    let whole =
        Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(window.width() as f32, window.height() as f32) / scale);
    let seen = parts.iter().map(|part| part.intersect(whole)).filter(Rect::is_positive);
    let pieces: Vec<ColorImage> = seen.map(|part| window.region(&part, Some(scale))).collect();
    let width = pieces.iter().map(ColorImage::width).max().unwrap_or(0);
    let height = pieces.iter().map(ColorImage::height).sum();
    if width == 0 || height == 0 {
        return Err("the window shows nothing of it; make it larger".to_owned());
    }
    let row = |piece: &ColorImage, row: usize| {
        let mut pixels = piece.pixels[row * piece.width()..(row + 1) * piece.width()].to_vec();
        pixels.resize(width, paper);
        pixels
    };
    let rows = pieces.iter().flat_map(|piece| (0..piece.height()).flat_map(|y| row(piece, y)).collect::<Vec<_>>());
    Ok(ColorImage::new([width, height], rows.collect()))
}

/// A picture in PNG form.
pub(super) fn png_of(image: &ColorImage) -> Result<Vec<u8>, png::EncodingError> {
    let [width, height] = image.size.map(|side| u32::try_from(side).unwrap_or(0));
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, width, height);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header()?;
    let pixels: Vec<u8> = image.pixels.iter().flat_map(|pixel| pixel.to_srgba_unmultiplied()).collect();
    writer.write_image_data(&pixels)?;
    writer.finish()?;
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_reads_back_with_its_colours() {
        let image = ColorImage::new([2, 1], vec![Color32::from_rgb(181, 71, 27), Color32::WHITE]);
        let bytes = png_of(&image).expect("a small picture");
        let mut reader = png::Decoder::new(std::io::Cursor::new(bytes)).read_info().expect("a PNG file");
        let mut pixels = vec![0; reader.output_buffer_size().expect("its size is known")];
        reader.next_frame(&mut pixels).expect("one frame");
        assert_eq!(pixels, [181, 71, 27, 255, 255, 255, 255, 255]);
    }

    #[test]
    fn parts_stand_one_under_the_other_on_paper() {
        let dot = |i: u8| Color32::from_gray(i);
        let window = ColorImage::new([3, 3], (0..9).map(dot).collect());
        let part = |x: f32, y: f32, w: f32, h: f32| Rect::from_min_size(egui::pos2(x, y), egui::vec2(w, h));
        let paper = Color32::WHITE;
        let picture = cut(&window, &[part(1.0, 0.0, 1.0, 1.0), part(0.0, 2.0, 9.0, 1.0)], 1.0, paper).expect("inside");
        assert_eq!(picture.size, [3, 2]);
        assert_eq!(picture.pixels, [dot(1), paper, paper, dot(6), dot(7), dot(8)]);
        assert!(cut(&window, &[part(5.0, 5.0, 1.0, 1.0)], 1.0, paper).is_err());
    }
}
