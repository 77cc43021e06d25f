//! A shape that a segment has on the way to the finished one.

use super::{Bend, BendKind, Form, FormKind, Gives};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One shape on the way: a form, a bend, or both, of the metal that the segment then has.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Via {
    /// Its form; that of the shape before it where it is left out, or the finished one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub form: Option<Form>,
    /// How it is bent by then; straight where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bend: Option<Bend>,
    /// The size that follows from the metal; the length where that is left out, else none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gives: Option<Gives>,
}

impl Via {
    /// The forms that it can have.
    pub const FORMS: [FormKind; 4] = [FormKind::Plain, FormKind::Drawn, FormKind::Taper, FormKind::Flag];
    /// The bends that it can have: what is made sharp or twisted is made once.
    pub const BENDS: [BendKind; 4] = [BendKind::Curve, BendKind::Ring, BendKind::Scroll, BendKind::Socket];
    /// The most shapes that a segment has on the way.
    pub const MOST: usize = 20;
}
