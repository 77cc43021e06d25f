//! `firstheat new`: an empty plan to start from.

use crate::cli::NewArgs;
use crate::failure::Failure;
use crate::{input, output};
use fh_core::file;
use fh_core::plan::{Plan, Units};
use fh_measure::LengthUnit;
use fh_rack::said::section;
use fh_store::StoreError;
use std::path::Path;
use std::process::ExitCode;

/// Writes an empty plan.
pub(crate) fn run(args: &NewArgs) -> Result<ExitCode, Failure> {
    let unit = section::unit_of(&args.stock);
    let section = section::parse_in(&args.stock, unit).map_err(Failure::new)?;
    let units = if unit == Some(LengthUnit::Inch) { Units::inches() } else { Units::millimeters() };
    let to_output = input::is_standard(&args.output);
    let title = args.title.clone().unwrap_or_else(|| if to_output { "plan".to_owned() } else { stem(&args.output) });
    let scale = Some(args.scale.clone()).filter(|scale| scale.ratio() > 0.0);
    let plan = Plan { scale, ..Plan::new(&title, units, section) };
    file::check(&plan).map_err(Failure::new)?;
    if to_output {
        output::print(&file::write(&plan))?;
        return Ok(ExitCode::SUCCESS);
    }
    fh_store::save(&args.output, &plan, None, args.force).map_err(|error| match error {
        StoreError::AlreadyThere { path } => {
            let path = path.display();
            Failure::new(format!("there is already a file of this name: {path}; --force overwrites it"))
        }
        _ => Failure::new(error),
    })?;
    output::print(&format!("wrote {}\n", args.output.display()))?;
    Ok(ExitCode::SUCCESS)
}

/// The name of a plan's file without its endings: `gate-hook` of `plans/gate-hook.plan.json`.
pub(crate) fn stem(path: &Path) -> String {
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let name = name.strip_suffix(".json").unwrap_or(&name);
    let name = name.strip_suffix(".plan").unwrap_or(name);
    name.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plan_is_named_as_its_file() {
        for (path, name) in
            [("a/gate-hook.plan.json", "gate-hook"), ("hinge.json", "hinge"), ("latch", "latch"), ("/", "")]
        {
            assert_eq!(stem(Path::new(path)), name);
        }
    }
}
