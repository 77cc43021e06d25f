//! The flat outlines as DXF, each on a layer of its segment's name.

use super::ExportError;
use crate::Flat;
use dxf::entities::{Entity, EntityType, LwPolyline};
use dxf::enums::{AcadVersion, Units};
use dxf::{Drawing, LwPolylineVertex};

/// The bytes of the file.
pub(super) fn write(flats: &[Flat]) -> Result<Vec<u8>, ExportError> {
    let mut drawing = Drawing::new();
    drawing.header.version = AcadVersion::R2000;
    drawing.header.default_drawing_units = Units::Millimeters;
    for flat in flats {
        for points in &flat.loops {
            let vertices = points.iter().map(|[x, y]| LwPolylineVertex { x: *x, y: *y, ..Default::default() });
            let mut line = LwPolyline { vertices: vertices.collect(), ..Default::default() };
            line.set_is_closed(true);
            let mut entity = Entity::new(EntityType::LwPolyline(line));
            entity.common.layer = layer(flat);
            drawing.add_entity(entity);
        }
    }
    let mut bytes = Vec::new();
    drawing.save(&mut bytes).map_err(|error| ExportError::CannotWrite(error.to_string()))?;
    Ok(bytes)
}

/// The name of a layer: letters and figures, as old readers want it.
fn layer(flat: &Flat) -> String {
    let word: String = flat.name.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '_' }).collect();
    format!("BAR{}_{}_{word}", flat.bar + 1, flat.segment + 1)
}
