//! The reference cases that are not checked, each with its reason.

/// The reason why a case is skipped; none where it is checked.
pub(crate) fn reason(id: &str) -> Option<&'static str> {
    SKIPPED.iter().find(|(skipped, _)| *skipped == id).map(|(_, reason)| *reason)
}

const ELLIPSE_SECTION: &str = "the plan file has no ellipse as a section";
const OUTSIDE_RADIUS: &str = "a corner's outside is sharp or a plain bend; an outside radius is not built";
const NOT_A_BEND: &str = "the plan file has no such bend";

/// The cases that are skipped.
pub(crate) const SKIPPED: [(&str, &str); 13] = [
    ("tapers-ell-flat", ELLIPSE_SECTION),
    ("tapers-half-ell", ELLIPSE_SECTION),
    ("tapers-rflat-ell-smooth", ELLIPSE_SECTION),
    ("bends-fillet-90-12x12-ri6-ro4", OUTSIDE_RADIUS),
    ("bends-fillet-120-16x16-ri8-ro10", OUTSIDE_RADIUS),
    ("bends-fillet-135-6x25-ri3-ro2", OUTSIDE_RADIUS),
    ("bends-pappus-triangle_point_outside", "the plan file has no triangle as a section"),
    ("curves-helix-20-30-4", NOT_A_BEND),
    ("curves-helix-40-25-2.5", NOT_A_BEND),
    ("splits-sawn-0", "a hot cut removes nothing; a saw's kerf is not built"),
    ("outlines-lens-unequal-22-10", "a leaf has two equal arcs"),
    ("outlines-lintaper-4", "thickness runs along the bar, not across it"),
    ("outlines-lens-roof", "thickness runs along the bar, not from a midrib outward"),
];
