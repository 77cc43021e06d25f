//! A length of a part is dressed in a die in the inspector, told as it comes out, and taken back.

use crate::gui::desk::{Desk, small_plan};
use fh_core::plan::{DieKind, Dressed};

fn dressed(desk: &Desk) -> Vec<Dressed> {
    desk.plan().bars[0].segments[1].dressed.clone()
}

#[test]
fn a_length_is_dressed_told_and_taken_back() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Dress a length");
    desk.choose("Die of dressed length 1", "V-block");
    desk.type_in("Depth of dressed length 1", "2");
    desk.type_in("Start of dressed length 1", "20");
    desk.type_in("Length of dressed length 1", "60");
    assert!(desk.shows("keel on the top, 2 mm in the V-block of 90°, from 20 mm to 80 mm beyond its start, forged."));
    desk.choose("Side of dressed length 1", "towards you");
    assert!(desk.shows("keel on the near side, 2 mm in the V-block of 90°"));
    let one = dressed(&desk);
    assert_eq!(one.len(), 1);
    assert_eq!((one[0].die.kind(), one[0].depth.text()), (DieKind::VBlock, "2 mm"));
    desk.choose("Die of dressed length 1", "fuller, across");
    assert_eq!(dressed(&desk)[0].length, None, "a groove across has no length of its own");
    desk.press("Remove this dressing");
    assert_eq!(dressed(&desk), []);
    desk.press("Undo");
    assert_eq!(dressed(&desk).len(), 1);
}
