//! A picture of the view on show, as a PNG file.

use super::exporting::Export;
use super::state::State;
use crate::storage::write_whole;
use egui::{ColorImage, Rect};
use std::path::{Path, PathBuf};
use std::sync::mpsc::channel;

impl State {
    /// Takes a picture of the view as it is drawn next.
    pub fn save_picture(&mut self, path: PathBuf, ctx: &egui::Context) {
        let (sender, answer) = channel();
        let (rect, scale, waker, target) = (self.view_rect, ctx.pixels_per_point(), ctx.clone(), path.clone());
        ctx.request_screenshot(move |image| {
            // The window may be gone by then: the file is written all the same.
            let _ = sender.send(write(&image, rect, scale, &target));
            waker.request_repaint();
        });
        self.export = Some(Export { what: "picture", path, answer });
    }
}

fn write(window: &ColorImage, rect: Rect, scale: f32, path: &Path) -> Result<(), String> {
    let whole =
        Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(window.width() as f32, window.height() as f32) / scale);
    let rect = rect.intersect(whole);
    if !rect.is_positive() {
        return Err("the window shows nothing of the view; make it larger".to_owned());
    }
    let bytes = png_of(&window.region(&rect, Some(scale))).map_err(|error| error.to_string())?;
    write_whole(path, &bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// A picture in PNG form.
fn png_of(image: &ColorImage) -> Result<Vec<u8>, png::EncodingError> {
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
    use egui::Color32;

    #[test]
    fn a_picture_reads_back_with_its_colours() {
        let image = ColorImage::new([2, 1], vec![Color32::from_rgb(181, 71, 27), Color32::WHITE]);
        let bytes = png_of(&image).expect("a small picture");
        let mut reader = png::Decoder::new(std::io::Cursor::new(bytes)).read_info().expect("a PNG file");
        let mut pixels = vec![0; reader.output_buffer_size().expect("its size is known")];
        reader.next_frame(&mut pixels).expect("one frame");
        assert_eq!(pixels, [181, 71, 27, 255, 255, 255, 255, 255]);
    }
}
