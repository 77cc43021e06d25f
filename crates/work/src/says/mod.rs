//! What a step says.

pub(crate) mod aim;
pub(crate) mod at_hand;
pub(crate) mod because;
pub(crate) mod bend_tools;
pub(crate) mod brief;
pub(crate) mod careful;
pub(crate) mod checks;
pub(crate) mod fire_words;
pub(crate) mod gauges;
pub(crate) mod heat_with;
pub(crate) mod held_at_joint;
pub(crate) mod landmarks;
pub(crate) mod lay;
pub(crate) mod marks;
pub(crate) mod necks;
pub(crate) mod notes;
pub(crate) mod said;
pub(crate) mod shop;
pub(crate) mod size;
pub(crate) mod sized;
pub(crate) mod sizes;
pub(crate) mod tight;
pub(crate) mod tools;
pub(crate) mod usual;
pub(crate) mod wanted;
pub(crate) mod words;
