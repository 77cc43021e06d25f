//! The fonts that the program carries.

use egui::{FontData, FontDefinitions, FontFamily};
use std::sync::Arc;

const REGULAR: &[u8] = include_bytes!("../../../../assets/fonts/SourceSans3-Regular.ttf");
const STRONG: &[u8] = include_bytes!("../../../../assets/fonts/SourceSans3-SemiBold.ttf");

/// The family of text that stands out.
pub(super) fn strong() -> FontFamily {
    FontFamily::Name("Strong".into())
}

/// Makes the fonts known. Characters that they lack are taken from those that come with the window library.
pub fn install(ctx: &egui::Context) {
    let mut fonts = FontDefinitions::default();
    fonts.font_data.insert("regular".to_owned(), Arc::new(FontData::from_static(REGULAR)));
    fonts.font_data.insert("strong".to_owned(), Arc::new(FontData::from_static(STRONG)));
    let fallback = fonts.families.get(&FontFamily::Proportional).cloned().unwrap_or_default();
    let with = |name: &str| std::iter::once(name.to_owned()).chain(fallback.iter().cloned()).collect::<Vec<_>>();
    fonts.families.insert(FontFamily::Proportional, with("regular"));
    fonts.families.insert(strong(), with("strong"));
    ctx.set_fonts(fonts);
}
