//! Reading a picture from its file. A large photograph takes a while, so the window goes on meanwhile.

use crate::theme::own_colors;
use egui::{ColorImage, Context, TextureFilter, TextureHandle, TextureOptions};
use image::{DynamicImage, ImageDecoder, ImageError, ImageReader, Limits};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// The longest side that is kept, in pixels: every graphics card takes it, and a screen shows no more.
const MOST_SIDE: u32 = 2048;
/// The most that a picture may take in memory while it is read, in bytes: a photograph of sixty million pixels.
const MOST_BYTES: u64 = 192_000_000;
/// The most that may be taken at once beside it, as a color profile that a small file unpacks, in bytes.
const MOST_AT_ONCE: u64 = 256_000_000;

/// Large or small, its lines stay lines.
const SMOOTH: TextureOptions = TextureOptions { mipmap_mode: Some(TextureFilter::Linear), ..TextureOptions::LINEAR };

/// A picture that was read.
pub(super) struct Sheet {
    pub(super) texture: TextureHandle,
    /// Width and height of the file's picture, in pixels.
    pub(super) size: [f64; 2],
}

struct Pixels {
    image: ColorImage,
    size: [f64; 2],
}

/// How far it is.
#[derive(Default)]
enum State {
    #[default]
    Nothing,
    Reading(Receiver<Result<Pixels, String>>),
    Here(Sheet),
    Missing(String),
}

/// A picture and the file that it is read from.
#[derive(Default)]
pub(super) struct Picture {
    path: Option<PathBuf>,
    state: State,
}

impl Picture {
    /// Begins to read where it is another file, and takes what was read. Whether it has just come.
    pub(super) fn refresh(&mut self, ctx: &Context, path: Option<&Path>) -> bool {
        if self.path.as_deref() != path {
            self.path = path.map(Path::to_owned);
            self.state = path.map_or(State::Nothing, |path| begin(ctx, path));
        }
        let State::Reading(coming) = &self.state else { return false };
        self.state = match coming.try_recv() {
            Err(TryRecvError::Empty) => return false,
            Err(TryRecvError::Disconnected) => State::Missing("it could not be read".to_owned()),
            Ok(Err(why)) => State::Missing(why),
            Ok(Ok(Pixels { image, size })) => {
                let texture = ctx.load_texture("picture under the piece", image, SMOOTH);
                State::Here(Sheet { texture, size })
            }
        };
        true
    }

    /// Reads the file anew in the next frame.
    pub(super) fn look_again(&mut self) {
        *self = Self::default();
    }

    /// The picture, once it is there.
    pub(super) fn sheet(&self) -> Option<&Sheet> {
        match &self.state {
            State::Here(sheet) => Some(sheet),
            _ => None,
        }
    }

    /// Why there is none.
    pub(super) fn missing(&self) -> Option<&str> {
        match &self.state {
            State::Missing(why) => Some(why),
            _ => None,
        }
    }
}

fn begin(ctx: &Context, path: &Path) -> State {
    let (sender, coming) = channel();
    let (ctx, path) = (ctx.clone(), path.to_owned());
    std::thread::spawn(move || {
        // Nobody waits any more once another picture was laid.
        let _ = sender.send(read(&path));
        ctx.request_repaint();
    });
    State::Reading(coming)
}

/// Whether a file can be laid under the piece: a PNG or JPEG file that begins as it should.
///
/// # Errors
/// In words, why it cannot.
pub(crate) fn check(path: &Path) -> Result<(), String> {
    decoder(path).map(|_| ())
}

fn decoder(path: &Path) -> Result<impl ImageDecoder, String> {
    // A pipe would be waited for, and a device never ends.
    let metadata = std::fs::metadata(path).map_err(|error| io_words(&error))?;
    match () {
        () if metadata.is_dir() => return Err("this is a folder".to_owned()),
        () if !metadata.is_file() => return Err("this is a pipe or a device, not a file".to_owned()),
        () => {}
    }
    let open = ImageReader::open(path).and_then(ImageReader::with_guessed_format);
    let mut open = open.map_err(|error| io_words(&error))?;
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_AT_ONCE);
    open.limits(limits);
    let decoder = open.into_decoder().map_err(|error| words(&error))?;
    let (width, height) = decoder.dimensions();
    if width == 0 || height == 0 {
        return Err("the picture is empty".to_owned());
    }
    if decoder.total_bytes() > MOST_BYTES {
        return Err(format!("the picture is too large: {width} by {height} pixels"));
    }
    Ok(decoder)
}

fn read(path: &Path) -> Result<Pixels, String> {
    let mut decoder = decoder(path)?;
    // Cameras write a photograph as it came from the sensor, and beside it how it was held.
    let held = decoder.orientation().ok();
    let mut picture = DynamicImage::from_decoder(decoder).map_err(|error| words(&error))?;
    let whole = [picture.width(), picture.height()];
    if picture.width().max(picture.height()) > MOST_SIDE {
        picture = picture.thumbnail(MOST_SIDE, MOST_SIDE);
    }
    // Turned once it is small: the whole picture would be there twice.
    let small = [picture.width(), picture.height()];
    if let Some(held) = held {
        picture.apply_orientation(held);
    }
    let is_turned = small != [picture.width(), picture.height()];
    let size = if is_turned { [whole[1], whole[0]] } else { whole }.map(f64::from);
    let pixels = picture.into_rgba8();
    let kept = [pixels.width() as usize, pixels.height() as usize];
    Ok(Pixels { image: own_colors(kept, pixels.as_raw()), size })
}

fn words(error: &ImageError) -> String {
    match error {
        ImageError::IoError(error) if error.kind() != ErrorKind::UnexpectedEof => io_words(error),
        ImageError::Limits(_) => "the picture is too large".to_owned(),
        _ => "it isn't a PNG or JPEG picture, or it is damaged".to_owned(),
    }
}

fn io_words(error: &std::io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "there is no such file".to_owned(),
        ErrorKind::IsADirectory => "this is a folder".to_owned(),
        ErrorKind::PermissionDenied => "you are not allowed to read it".to_owned(),
        _ => error.to_string(),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn written(name: &str, bytes: &[u8]) -> PathBuf {
        let path = std::env::temp_dir().join(format!("firstheat-{}-{name}", std::process::id()));
        std::fs::write(&path, bytes).unwrap();
        path
    }

    #[test]
    fn a_large_picture_is_kept_smaller_and_keeps_its_true_size() {
        let path = written("large.png", &[]);
        DynamicImage::new_rgb8(4096, 1024).save(&path).unwrap();
        let read = read(&path).unwrap();
        assert_eq!((read.size, read.image.size), ([4096.0, 1024.0], [2048, 512]));
        std::fs::remove_file(path).unwrap();
    }

    #[test]
    fn a_picture_that_would_fill_the_memory_is_refused_unread() {
        // 20 000 × 20 000 pixels in grey, of which the file holds only the head.
        let head = [0, 0, 0, 13, b'I', b'H', b'D', b'R', 0, 0, 0x4e, 0x20, 0, 0, 0x4e, 0x20, 8, 0, 0, 0, 0];
        let mut png = b"\x89PNG\r\n\x1a\n".to_vec();
        png.extend(head);
        png.extend(0xc61b_19e5_u32.to_be_bytes());
        png.extend([0, 0, 0, 0, b'I', b'D', b'A', b'T', 0x35, 0xaf, 0x06, 0x1e]);
        let path = written("vast.png", &png);
        let why = check(&path).unwrap_err();
        std::fs::remove_file(path).unwrap();
        assert!(why.starts_with("the picture is too large: 20000 by 20000"), "{why}");
    }

    #[cfg(unix)]
    #[test]
    fn a_pipe_is_refused_and_not_waited_for() {
        let path = std::env::temp_dir().join(format!("firstheat-{}-pipe.png", std::process::id()));
        assert!(std::process::Command::new("mkfifo").arg(&path).status().unwrap().success());
        let why = check(&path).unwrap_err();
        std::fs::remove_file(path).unwrap();
        assert_eq!(why, "this is a pipe or a device, not a file");
        assert_eq!(check(Path::new("/dev/zero")).unwrap_err(), "this is a pipe or a device, not a file");
    }

    #[test]
    fn what_is_no_picture_is_told_in_words() {
        let text = written("words.png", b"a garden gate");
        let cut = written("cut.png", b"\x89PNG\r\n\x1a\n\x00\x00");
        for path in [&text, &cut] {
            assert_eq!(check(path).unwrap_err(), "it isn't a PNG or JPEG picture, or it is damaged");
        }
        assert_eq!(check(Path::new("/nowhere/gate.png")).unwrap_err(), "there is no such file");
        assert_eq!(check(&std::env::temp_dir()).unwrap_err(), "this is a folder");
        [text, cut].iter().for_each(|path| std::fs::remove_file(path).unwrap());
    }
}
