//! From quantities to plain numbers and back: the border to the file, the plot and the painter, where a number says its unit in
//! its name.

use uom::si::f64::{Area, Length, Volume};
use uom::si::{area::square_millimeter, length::millimeter, volume::cubic_millimeter};

/// A length of so many millimetres.
#[inline]
pub fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// An area of so many square millimetres.
#[inline]
pub fn mm2(value: f64) -> Area {
    Area::new::<square_millimeter>(value)
}

/// A volume of so many cubic millimetres.
#[inline]
pub fn mm3(value: f64) -> Volume {
    Volume::new::<cubic_millimeter>(value)
}

/// The millimetres of a length.
#[inline]
pub fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// The square millimetres of an area.
#[inline]
pub fn in_mm2(area: Area) -> f64 {
    area.get::<square_millimeter>()
}

/// The cubic millimetres of a volume.
#[inline]
pub fn in_mm3(volume: Volume) -> f64 {
    volume.get::<cubic_millimeter>()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quantity_comes_back_as_the_number_that_it_was_made_of() {
        for value in [0.0, 0.1, 25.4, 1e6] {
            assert!((in_mm(mm(value)) - value).abs() <= value * 1e-15);
            assert!((in_mm2(mm2(value)) - value).abs() <= value * 1e-15);
            assert!((in_mm3(mm3(value)) - value).abs() <= value * 1e-15);
        }
        assert!((in_mm2(mm(2.0) * mm(3.0)) - 6.0).abs() < 1e-12);
    }
}
