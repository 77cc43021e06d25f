//! The SVG of a page and its PDF look alike, though two programs draw them: no font of the machine takes part.
//!
//! The SVG is rendered by `rsvg-convert` of the Debian package `librsvg2-bin`.

use crate::paper::{Printed, run};
use fh_print::paper::{Orientation, Paper};
use fh_print::sheets::{Sheet, document, usual_orientation};
use image::GrayImage;

/// Dots to the inch.
const RESOLUTION: &str = "150";
/// The side of the squares in which two pictures are compared, in dots: 1.4 mm.
const SQUARE: u32 = 8;
/// How far apart the mean gray of a square may be, of 255: the programs put edges on whole dots each in its way, which
/// makes 41 at the most where a heavy line runs along a square.
const MOST_APART: f64 = 60.0;

/// A page as both programs draw it: of the PDF, and of the SVG.
fn rendered(printed: &Printed, page: usize) -> [GrayImage; 2] {
    let number = (page + 1).to_string();
    let target = printed.folder.path().join(format!("both{number}"));
    let [pdf, target] = [printed.pdf(), target].map(|path| path.to_string_lossy().into_owned());
    run("pdftoppm", &["-r", RESOLUTION, "-gray", "-png", "-singlefile", "-f", &number, "-l", &number, &pdf, &target]);
    let (svg, png) = (format!("{target}.svg"), format!("{target}-svg.png"));
    std::fs::write(&svg, &fh_print::svg(&printed.drawing)[page]).unwrap();
    run("rsvg-convert", &["--dpi-x", RESOLUTION, "--dpi-y", RESOLUTION, "-o", &png, &svg]);
    [format!("{target}.png"), png].map(|file| image::open(file).unwrap().to_luma8())
}

/// The mean gray of a square of a picture.
fn mean(picture: &GrayImage, [left, top]: [u32; 2]) -> f64 {
    let dots = (0..SQUARE * SQUARE).map(|dot| [left + dot % SQUARE, top + dot / SQUARE]);
    dots.map(|[x, y]| f64::from(picture.get_pixel(x, y).0[0])).sum::<f64>() / f64::from(SQUARE * SQUARE)
}

#[test]
fn every_page_of_the_svg_looks_as_the_pdf_does() {
    let sheets = [Sheet::Marks, Sheet::Templates, Sheet::Steps];
    let demo = fh_store::demos::DEMOS.iter().find(|demo| demo.file_name == "gate-hook.plan.json").unwrap();
    let printed = Printed::of(fh_core::file::read(demo.text.as_bytes()).unwrap(), |plan, balance| {
        document(plan, balance, &sheets, Paper::A4, usual_orientation(&sheets))
    });
    assert!(printed.drawing.size_mm(&printed.drawing.pages[0]) == Paper::A4.size_mm(Orientation::Landscape));
    for page in [0, 1, 2, 3] {
        let [pdf, svg] = rendered(&printed, page);
        let [wide, high] = [pdf.width().min(svg.width()), pdf.height().min(svg.height())];
        assert!(pdf.width().abs_diff(svg.width()) <= 1 && pdf.height().abs_diff(svg.height()) <= 1, "page {page}");
        let squares = (0..high / SQUARE).flat_map(|y| (0..wide / SQUARE).map(move |x| [x * SQUARE, y * SQUARE]));
        let apart = squares.map(|square| (square, (mean(&pdf, square) - mean(&svg, square)).abs()));
        let (square, most) = apart.max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
        let ink = pdf.pixels().filter(|dot| dot.0[0] < 128).count();
        assert!(ink > 2000, "page {page} is blank");
        assert!(most < MOST_APART, "page {page}: {most} apart at {square:?}");
    }
}
