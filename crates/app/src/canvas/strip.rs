//! The two bars that are shown.

/// One of the two bars that are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Strip {
    /// The starting bar.
    Bar,
    /// The same metal after hammering.
    Forged,
}

impl Strip {
    /// Its caption.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Bar => "Bar",
            Self::Forged => "Forged",
        }
    }
}
