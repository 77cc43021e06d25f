//! The piece in space, the sheets and the files for other programs of a random plan.

use crate::run::Run;
use fh_core::balance::Balance;
use fh_core::plan::Plan;
use fh_piece::files::{ExportError, FileKind, export};
use fh_piece::{Quality, overlaps, piece};
use fh_print::paper::Paper;
use fh_print::sheets::{Sheet, document, usual_orientation};

/// Takes a plan to space and onto paper.
pub(crate) fn check(run: &mut Run, plan: &Plan, balance: &Balance) {
    check_piece(run, plan, balance);
    for (number, sheet) in Sheet::ALL.into_iter().enumerate() {
        let paper = if number.is_multiple_of(2) { Paper::A4 } else { Paper::Letter };
        check_sheet(run, plan, balance, sheet, paper);
    }
    for kind in FileKind::ALL {
        let name = format!("the file .{}", kind.ending());
        let Some(written) = run.stage(&name, || export(plan, balance, kind)) else { continue };
        match written {
            Ok(bytes) if kind == FileKind::Svg => run.tame(&name, &String::from_utf8_lossy(&bytes)),
            Ok(bytes) if bytes.is_empty() => run.wrong(&format!("{name} is empty"), ""),
            Err(ExportError::EmptyPiece) | Ok(_) => {}
            Err(error) => run.tame("an error", &error.to_string()),
        }
    }
}

fn check_piece(run: &mut Run, plan: &Plan, balance: &Balance) {
    let Some(piece) = run.stage("the piece in space", || piece(plan, balance, Quality::Screen)) else { return };
    for solid in &piece.solids {
        let points = &solid.mesh.points;
        let is_sound = points.iter().flatten().all(|size| size.is_finite())
            && solid.mesh.triangles.iter().flatten().all(|corner| (*corner as usize) < points.len());
        if !is_sound {
            run.wrong("a mesh is broken", format!("bar {} segment {}", solid.bar, solid.segment));
        }
    }
    run.stage("what runs into what", || overlaps(plan, balance, &piece));
}

fn check_sheet(run: &mut Run, plan: &Plan, balance: &Balance, sheet: Sheet, paper: Paper) {
    let name = format!("the sheet “{}”", sheet.name());
    let sheets = [sheet];
    let drawn = run.stage(&name, || document(plan, balance, &sheets, paper, usual_orientation(&sheets)));
    let Some(drawing) = drawn else { return };
    for svg in run.stage(&format!("{name} as SVG"), || fh_print::svg(&drawing)).into_iter().flatten() {
        run.tame(&name, &svg);
        for word in ["NaN", "\"inf", "<script"] {
            if svg.contains(word) {
                run.wrong(&format!("{name} has “{word}”"), "");
            }
        }
    }
    if let Some(Err(error)) = run.stage(&format!("{name} as PDF"), || fh_print::pdf(&drawing)) {
        run.wrong(&format!("{name} is no PDF"), error.to_string());
    }
}
