//! Writes every kind of sheet of plans, on A4 and on Letter paper, for a look at them.
//!
//! `cargo run -p fh_print --example mark_sheets -- FOLDER PLAN…`

use fh_core::balance::balance;
use fh_core::file::read;
use fh_print::paper::{Orientation, Paper};
use fh_print::sheets::{Sheet, document};
use std::error::Error;
use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args_os().skip(1).map(PathBuf::from);
    let folder = arguments.next().ok_or("name a folder to write to, then the plans")?;
    for plan in arguments {
        write_sheets(&folder, &plan)?;
    }
    Ok(())
}

fn write_sheets(folder: &Path, plan_file: &Path) -> Result<(), Box<dyn Error>> {
    let plan = read(&std::fs::read(plan_file)?)?;
    let balance = balance(&plan);
    let name = plan_file.file_name().unwrap_or_default().to_string_lossy().replace(".plan.json", "");
    for paper in Paper::ALL {
        for (orientation, lies) in [(Orientation::Landscape, "landscape"), (Orientation::Portrait, "portrait")] {
            for (sheet, called) in Sheet::ALL.iter().zip(["", "-templates", "-ladder", "-steps", "-short", "-gauges"]) {
                let drawing = document(&plan, &balance, &[*sheet], paper, orientation);
                let file = folder.join(format!("{name}{called}-{}-{lies}", paper.name()));
                std::fs::write(file.with_extension("pdf"), fh_print::pdf(&drawing)?)?;
                for (number, page) in (1..).zip(fh_print::svg(&drawing)) {
                    std::fs::write(file.with_extension(format!("{number}.svg")), page)?;
                }
            }
        }
    }
    Ok(())
}
