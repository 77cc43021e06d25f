//! The marks of the demo plans, worked by hand: each number comes from the arithmetic beside it, not from the program.
//!
//! Every step is the same: the volume of a segment, with what is trimmed added, divided by one less the scale and by the
//! area of the bar. Plain, trim and hold take their own length of bar. The marks are the running sums.
//!
//! Notation: V volume, A area, S area of the stock, s scale, M mixed area, L length, π as it is.

/// One bar of a demo plan and the true place of each of its marks.
pub(crate) struct HandWorked {
    /// The demo's file.
    pub(crate) file_name: &'static str,
    /// Which of its bars.
    pub(crate) bar: usize,
    /// Millimetres in the unit that the marks are in.
    pub(crate) unit_mm: f64,
    /// The place of the mark at the end of each segment, from the datum end.
    pub(crate) marks: &'static [f64],
}

const INCH: f64 = 25.4;
const MILLIMETER: f64 = 1.0;

/// In inches. S = 1/2² = 0.25, 1 - s = 0.97, so each volume is divided by 0.2425, that of the leaf, with 5 % of scale, by
/// 0.2375.
///
/// 1. leaf, L 1 3/4, W 7/8: R = (3.0625 + 0.765625) / (4 × 0.875) = 1.09375; θ = 4 atan(1/2) = 1.854590; sin θ = 0.96;
///    A = 1.196289 × 0.894590 = 1.070189. Its middle is half-way, so t = (3/16 + 1/16)/2 = 1/8: V = 0.133774;
///    with 5 %: 0.140462. Bar 0.591420.
/// 2. stem, 1 long, round 1/4 to square 3/8: A₀ = π/64 = 0.049087, M = 3/8 × 1/4 = 0.093750, A₁ = 0.140625;
///    V = (A₀ + M + A₁)/3 = 0.094487. Bar 0.389639.
/// 3. hook: L = (5/8 + 3/16) π = 2.552544; V = L × 9/64 = 0.358952. Bar 1.480212.
/// 4. shoulder, r 1/8: 9/64 × 1/8 = 0.017578; four fillets of 3/8 × r² (1 - π/4) = 3/8 × 0.003353153: 0.005030;
///    V = 0.022608. Bar 0.093228.
/// 5. shank: 5.
/// 6. eye shoulder to round 3/8, A = 0.110447: 0.110447/8 = 0.013806; the four fillets 0.005030; V = 0.018836.
///    Bar 0.077672.
/// 7. set-back, 60°: L = (5/16 + 3/16) π/3 = 0.523599; V = L × 0.110447 = 0.057830. Bar 0.238473.
/// 8. eye, 316°: L = (5/8 + 3/8)/2 × 316/180 π = 2.757620; V = L × 0.110447 = 0.304570. Bar 1.255958.
///
/// The eye's middle lies in line with the shank where (R + ρ) cos α = ρ, with R = ρ = 1/2 to the middle line: α = 60°. Its
/// outer corner, R + t/2 = 11/16 from its middle, meets the neck's outside, ρ + t/2 = 11/16 from that bend's middle, which is
/// R + ρ = 1 away: cos γ = (1 + (11/16)² - (11/16)²)/(2 × 11/16) = 8/11 leaves γ = 43.34° open, so it goes round by 316.7°.
const GATE_HOOK: HandWorked = HandWorked {
    file_name: "gate-hook.plan.json",
    bar: 0,
    unit_mm: INCH,
    marks: &[0.59142, 0.98106, 2.46127, 2.55450, 7.55450, 7.63217, 7.87065, 9.12660],
};

/// In mm. S = 144, 1 - s = 0.97: each volume is divided by 139.68, that of the curl, with 4 % of scale, by 138.24.
///
/// 1. and 2. screw holes, the upper one first: drilled, so the bar holds all of 25 × 28 × 4 = 2800. Bar 20.0458 each.
/// 3. plate shoulder, one side, r 3: 12 × 4 × 3 = 144; one fillet 12 × 9 (1 - π/4) = 23.177; V = 167.177. Bar 1.1969.
/// 4. wall leg: 79.
/// 5. corner, t = w = 12, r 3, 90°: V = 12 [15² tan 45° - 3² π/4] = 12 (225 - 7.06858) = 2615.177. Bar 18.7226.
/// 6. arm: 100.
/// 7. seat shoulder, one side, r 3: 12 × 8 × 3 = 288; one fillet 12 × 9 (1 - π/4) = 12 × 1.931417 = 23.177;
///    V = 311.177. Bar 2.2278.
/// 8. seat: 12 × 8 × 40 = 3840. Bar 27.4914.
/// 9. lip shoulder: as 7, read the other way. Bar 2.2278.
/// 10. curl, 60 long, f = t^0.6 from square 12 to square 5: m₁ = 1/1.6 = 0.625, m₂ = 1/2.2 = 0.454545;
///     A₀ = 144, M = 12 × 5 = 60, A₁ = 25; V = 60 (0.204545 × 144 + 0.340909 × 60 + 0.454545 × 25)
///     = 60 (29.4545 + 20.4545 + 11.3636) = 3676.364. Bar 26.5941.
const TRELLIS_BRACKET: HandWorked = HandWorked {
    file_name: "trellis-bracket.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[20.046, 40.092, 41.289, 120.289, 139.011, 239.011, 241.239, 268.730, 270.958, 297.552],
};

/// In mm. S = 25 π = 78.5398, 1 - s = 0.97.
///
/// 1. point, 45 long, eased: M with a point is 0 and m₁ = 1/2, m₂ = 13/35, so V = 45 S (1 - 1 + 13/35) = 16.7143 S.
///    Bar 16.7143/0.97 = 17.2312.
/// 2. leg: 210.
/// 3. shoulder to round 8, A = 16 π = 50.2655, r 2: A × 2 = 100.531; four fillets of 8 × 4 (1 - π/4) = 6.867: 27.469;
///    V = 128.000. Bar 1.6802.
/// 4. stem: 30 A = 1507.964. Bar 19.7938.
/// 5. neck, 25 long, round 8 to oval 12 × 6: the oval is a line of 6 swept by a disk of 3, A₁ = 6 × 6 + 9 π = 64.2743;
///    M = 4 × 12/2 + π × 4 × 3 = 24 + 37.6991 = 61.6991; V = 25 (50.2655 + 61.6991 + 64.2743)/3 = 1468.658.
///    Its own scale is 4 %: 1468.658/0.96/S, bar 19.4787.
/// 6. fishtail: 45 × (12 + 40)/2 × 3 = 3510; with 4 %: 3650.4. Its own scale is 6 %: 3650.4/0.94/S, bar 49.4450.
const ROW_MARKER_STAKE: HandWorked = HandWorked {
    file_name: "row-marker.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[17.231, 227.231, 228.911, 248.705, 268.184, 317.629],
};

/// In mm. S = 10 × 10 = 100, 1 - s = 0.94: each volume is divided by 94.
///
/// 1. plate: (60 - 28) × 28 + π/4 × 28² = 896 + 615.752 = 1511.752; × 2.5 = 3779.380; with 3 %: 3892.762. Bar 41.4124.
/// 2. ring, 9 to 9.5 inside, on the average 9.25: L = (9.25 + 6)/2 × 285° = 7.625 × 4.974188 = 37.9282; × π/4 × 36
///    = 1072.394. Bar 11.4084.
/// 3. hold: 120.
///
/// It is open by 75°: its end is 7.625 (1 - cos 75°) = 5.65 above the middle of the plate, which with half the ring, 3, and
/// half the plate, 1.25, leaves 1.4.
const ROW_MARKER_PLATE: HandWorked =
    HandWorked { file_name: "row-marker.plan.json", bar: 1, unit_mm: MILLIMETER, marks: &[41.412, 52.821, 172.821] };

/// In inches. S = π/16, 1 - s = 0.96, of the thumb plate 0.94; rounds on a round compare by the squares of their
/// diameters.
///
/// 1. point, 3 long: a third of its length. Bar 1/0.96 = 1.041667.
/// 2. shank: 6.
/// 3. collar: 3/8 × (3/4 : 1/2)² = 3/8 × 9/4 = 0.843750. Bar 0.878906.
/// 4. neck: 3/2 × (3/8 : 1/2)² = 3/2 × 9/16 = 0.843750. Bar 0.878906: what the collar takes, the neck gives back.
/// 5. thumb plate: π/4 × 9/4 × 3/16, over S: 9 × 3/16 = 1.6875; with 5 %: 1.771875. Bar 1.884973.
const LINE_PIN: HandWorked = HandWorked {
    file_name: "line-pin.plan.json",
    bar: 0,
    unit_mm: INCH,
    marks: &[1.04167, 7.04167, 7.92057, 8.79948, 10.68445],
};

/// In inches. S = π/4 × 25/64 = 0.306796, 1 - s = 0.97.
///
/// 1. point, 5 long, f = t²: m₁ = 1/3, m₂ = 1/5; V = 5 S (1 - 2/3 + 1/5) = 5 S × 8/15. Bar 2.666667/0.97 = 2.749141.
/// 2. body: 4.
/// 3. grip shoulder, r 1/8, to octagon 1/2: A = 2 (√2 - 1)/4 = 0.207107; A/8 = 0.025888; four fillets of
///    1/2 × 0.003353153: 0.006706; V = 0.032595. Bar 0.109528.
/// 4. grip: 4 A = 0.828427. Bar 2.783766.
/// 5. neck, 3/4 long, eased, octagon 1/2 to round 5/16: the octagon's edges are 8 × 1/2 × tan 22.5° = 1.656854 together;
///    M = 5/32 × 1.656854/2 = 0.129442; A₁ = π × (5/32)² = 0.076699;
///    V = 3/4 [13/35 × 0.207107 + 2 (1/2 - 13/35) × 0.129442 + 13/35 × 0.076699]
///    = 3/4 (0.076925 + 0.033285 + 0.028488) = 0.104024. Bar 0.349552.
/// 6. knob: π/6 × 27/64 = 0.220893; over S: 0.72. Bar 0.742268.
const DIBBER: HandWorked = HandWorked {
    file_name: "dibber.plan.json",
    bar: 0,
    unit_mm: INCH,
    marks: &[2.74914, 6.74914, 6.85867, 9.64243, 9.99199, 10.73425],
};

/// In mm. S = 40 × 8 - (4 - π) × 1² = 319.1416, 1 - s = 0.98.
///
/// 1. foot, 70 long, to an edge 40 wide: the edge's two sides face up and down, where the bar reaches 4 each way:
///    M = ½ × 40 × (4 + 4) = 160; A₁ = 0; V = 70 (319.1416/3 + 160/3) = 11179.970. Bar 35.7463.
/// 2. leg: 70.
/// 3. corner, t 8, w 40, r 4, 90°: V = 40 [12² - 4² π/4] = 40 (144 - 12.5664) = 5257.345. Bar 16.8096.
/// 4. blade: what is left of 480: 480 - 3 - 2 × (35.7463 + 70 + 16.8096) = 231.8882.
/// 5. to 7. the same again from the other end; 8. sheared end: 3.
const BOOT_SCRAPER: HandWorked = HandWorked {
    file_name: "boot-scraper.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[35.746, 105.746, 122.556, 354.444, 371.254, 441.254, 477.0, 480.0],
};

/// In mm. S = 20² - (4 - π) × 2² = 396.5664, 1 - s = 0.94, on the blade 0.90, on neck and tang 0.92.
///
/// 1. blade, in three parts from the root: 25 × (20 + 60)/2 = 1000; 65 × 60 = 3900; 40 × 60/2 = 1200: A = 6100.
///    Moments about the root: 25²/6 × (20 + 2 × 60) = 14583.33; 3900 × 57.5 = 224250; 1200 × (90 + 40/3) = 124000:
///    362833.33, so the middle lies at 59.48087. t there = 5 - 3 × 59.48087/130 = 3.627364; V = 22126.923;
///    with 5 % to trim: 23233.269. Bar 23233.269/0.90/396.5664 = 65.0956.
/// 2. neck, 40 long, flat 20 × 7 to flat 14 × 7: A₀ = 140, A₁ = 98; M = ½ (20 × 7 + 14 × 7) = 119;
///    V = 40 (140 + 119 + 98)/3 = 4760. Bar 4760/0.92/396.5664 = 13.0468.
/// 3. crank toward the flat side, 45°, r 12, half-round 14 × 7, which is half a disc of radius 7: A = 49 π/2 = 76.9690;
///    its centroid lies c = 4 × 7/(3 π) = 2.970892 over its flat; L = 14.970892 π/4 = 11.758111; V = 905.010. Bar 2.4278.
/// 4. shank: 50 × 76.9690 = 3848.451. Bar 10.3239.
/// 5. crank back toward the round side: c = 7 - 2.970892 = 4.029108; L = 16.029108 π/4 = 12.589232; V = L × 76.9690
///    = 968.981. Bar 2.5994.
/// 6. tang shoulder, r 3, to square 7, from both edges: 49 × 3 = 147; two fillets of 7 × 1.931417 = 27.040; V = 174.040.
///    Bar 0.4669.
/// 7. tang, 90 long, square 7 to 4: 90 (49 + 28 + 16)/3 = 2790. Bar 2790/0.92/396.5664 = 7.6472.
/// 8. hold: 120.
const TROWEL: HandWorked = HandWorked {
    file_name: "trowel.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[65.096, 78.142, 80.570, 90.894, 93.493, 93.960, 101.608, 221.608],
};

/// In inches. S = √3/2 × 1/4 = 0.216506, 1 - s = 0.97.
///
/// 1. point, 2 long: a third of its length. Bar 0.666667/0.97 = 0.687285.
/// 2. leg: 5.
/// 3. tread: π/4 × 1.5 × 1.125 × 0.25 = 0.331340. Bar 1.577725.
/// 4. upper leg: 1.5.
/// 5. neck, 1 long, eased, to diamond 5/16: the diamond's four sides face 45°. The hexagon's corners lie 1/2/√3 = 0.288675
///    from its middle, the nearest 15° off: it reaches 0.288675 cos 15° = 0.278839 each way;
///    M = ½ × 4 × 5/16 × 0.278839 = 0.174274; A₁ = 25/256 = 0.097656;
///    V = 13/35 × 0.216506 + 9/35 × 0.174274 + 13/35 × 0.097656 = 0.080417 + 0.044813 + 0.036272 = 0.161502.
///    Bar 0.769016.
/// 6. stem: 2 × 0.097656 = 0.195313, less what a fuller of r = 1/8 drives along it that goes e = 1/16 in across its edge, a
///    right angle, so that h deep it moves h² of the section, h = √(r² - x²) - e up to c = √(r² - e²) = 0.108253 each way:
///    2 c (r² + e²) - 2 c³/3 - 2 e (c e + r² π/3) = 0.004229 - 0.000846 - 0.002891 = 0.000492; the groove is 2 c wide, the stem
///    5/16 √2 = 0.441942: b/w = 0.489898, s = 0.14 + 0.176363 - 0.012960 = 0.303403 goes aside, 0.000343 along.
///    V = 0.194970. Bar 0.928377.
/// 7. finial: (5/8)³ = 0.244141. Bar 1.162513.
const TWINE_STAKE: HandWorked = HandWorked {
    file_name: "twine-stake.plan.json",
    bar: 0,
    unit_mm: INCH,
    marks: &[0.68729, 5.68729, 7.26501, 8.76501, 9.53403, 10.46241, 11.62492],
};

/// In mm. S = 400, 1 - s = 0.94: each volume is divided by 376. Counted through the bar: the split, then its tines.
///
/// 1. tines: each takes 22.4633 of bar, both 44.9266; the root hole loses π/4 × 6² × 20 / 400 = 1.4137. Bar 46.3403.
/// 2. to 5., each tine, twice as long in its half of the slit: point, 50 long, f = t^1.6: m₁ = 1/2.6, m₂ = 1/4.2;
///    V = 50 × 81 (1 - 0.769231 + 0.238095) = 1898.901, bar 2 × 5.05027; tine 81 × 55 = 4455, bar 2 × 11.84840;
///    two bends of (14 + 4.5) × 40° = 12.9154 long: V = 1046.150 each, bar 2 × 2.78231. The second tine is alike.
/// 10. throat: 40.
/// 11. neck, 60 long, eased, square 20 to round 13: M = 260, A₁ = 132.732;
///     V = 60 (13/35 × 400 + 9/35 × 260 + 13/35 × 132.732) = 15883.75. Bar 42.2440.
/// 12. shank: 140 × 132.732 = 18582.52. Bar 49.4216.
/// 13. ferrule shoulder to square 8, r 2: 64 × 2 + 4 × 8 × 4 (1 - π/4) = 155.469. Bar 0.4135.
/// 14. tang, 90 long, square 8 to square 4: 30 (64 + 32 + 16) = 3360. Bar 8.9362.
/// 15. hold: 150.
const WEEDING_FORK: HandWorked = HandWorked {
    file_name: "weeding-fork.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[
        46.340, 10.101, 33.797, 39.362, 44.927, 10.101, 33.797, 39.362, 44.927, 86.340, 128.584, 178.006, 178.419,
        187.356, 337.356,
    ],
};

/// In mm. S = 144, 1 - s = 0.97: each volume is divided by 139.68, that of the leaf, with 8 % of scale, by 132.48.
///
/// 1. leaf, in five parts from the root, 7, 18, 26, 22, 11 and 0 wide at 0, 10, 24, 40, 54 and 64:
///    A = 125 + 308 + 384 + 231 + 55 = 1103. Their middles lie at 5.73333, 17.42424, 31.77778, 46.22222 and 57.33333, with
///    moments 716.667, 5366.667, 12202.667, 10677.333 and 3153.333: 32116.667, so that of all lies at 29.11756. There
///    t = 4 - 2 × 29.11756/64 = 3.090076: V = 3408.354; with 5 % to trim: 3578.772. Bar 27.0137.
/// 2. stalk, 36 long, round 7 to square 12: 12 (38.4845 + 84 + 144) = 3197.814. Bar 22.8939.
/// 3. upper boss: 34 × 26 × 5 = 4420; punched, so its slug is lost and the bar holds all of it. Bar 31.6438.
/// 4. wall leg: 70.
/// 5. lower boss: the slot is 4 × 7 + π/4 × 49 = 66.4845, × 5 = 332.423; drifted: 4420 - 332.423 = 4087.577. Bar 29.2639.
/// 6. foot of the wall leg: 40.
/// 7. corner, t = w = 12, r 4, 90°: 12 (16² - 4² π/4) = 12 (256 - 12.5664) = 2921.204. Bar 20.9135.
/// 8. arm 60; 9. twist 60, as long as it was; 10. seat 30.
/// 11. scroll, r = 7 to 34 in 1 1/2 turns: b = 27/(3π) = 2.864789; u from 2.443461 to 11.868238; u √(1+u²) + asinh u from
///     8.085 to 144.529: L = b/2 × 136.444 = 195.4442. Square 12 to 12 × 5: M = (60 + 144)/2 = 102;
///     V = L/3 (144 + 102 + 60) = 19935.31. Bar 142.7213.
const HERB_BRACKET: HandWorked = HandWorked {
    file_name: "herb-bracket.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[27.014, 49.908, 81.551, 151.551, 180.815, 220.815, 241.729, 301.729, 361.729, 391.729, 534.450],
};

/// In mm. S = 35 × 16 = 560, 1 - s = 0.94: each volume is divided by 526.4; of the socket, with 12 % of scale, by 492.8, of
/// the root of the blade, with 8 %, by 515.2, of the blade, with 10 %, by 504.
///
/// 1. socket: (30 + 3)/2 × 350° = 100.7928 wide; V = 85 × 100.7928 × 3 = 25702.15; with 5 % to trim: 26987.26. Bar 54.7631.
/// 2. neck, 70 long, eased, 18 × 12 to round 16: M = ½ × 2 (18 + 12) × 8 = 240;
///    V = 70 (13/35 × 216 + 9/35 × 240 + 13/35 × 201.062) = 15163.61. Bar 28.8062.
/// 3. goose neck: (45 + 8) × 110° = 101.7527; V = 20458.59. Bar 38.8651.
/// 4. root of the blade, 35 long, eased, round 16 to 44 × 7: M = 51 × 8 = 408;
///    V = 35 (13/35 × 201.062 + 9/35 × 408 + 13/35 × 308) = 10289.81. Bar 19.9725.
/// 5. blade, 95 long, 44 to 150 wide and 6 to 2.5 thick: ∫ w t = 44 × 6/3 + (44 × 2.5 + 150 × 6)/6 + 150 × 2.5/3
///    = 88 + 168.3333 + 125 = 381.3333; V = 36226.67; with 6 % to trim: 38400.27. Bar 76.1910.
const DRAW_HOE: HandWorked = HandWorked {
    file_name: "draw-hoe.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[54.763, 83.570, 122.435, 142.407, 218.598],
};

/// In mm. S = 2 (√2 - 1) 16² = 212.0773, 1 - s = 0.95: each volume is divided by 201.4734.
///
/// 1. tip, 45 long, round 8 to an edge of 8: M = 4 × 16/2 = 32; V = 15 (50.2655 + 32) = 1233.98. Bar 6.1248.
/// 2. hook: (16 + 4) × 100° = 34.9066; V = 1754.60. Bar 8.7088.
/// 3. rod: 160 × 50.2655 = 8042.48. Bar 39.9183.
/// 4. swell, 35 long, to the octagon, whose perimeter is 8 × 16 tan 22.5° = 53.0193: M = 4 × 53.0193/2 = 106.0387;
///    V = 35/3 (50.2655 + 106.0387 + 212.0773) = 4297.78. Bar 21.3317.
/// 5. lower cheek: 20.
/// 6. basket: two rods of 64 × 115 = 7360. Bar 73.0617; two root holes lose 2 × π/4 × 5² × 16/212.0773 = 2.9627: 76.0244.
///    7. and 8., each rod lies between the holes, up to 96.084 + 2.9627/2 + 73.0617 = 170.627.
/// 9. upper cheek: 20.
/// 10. neck, 50 long, to round 9: M = 4.5 × 53.0193/2 = 119.2935; V = 50/3 (212.0773 + 119.2935 + 63.6173) = 6583.14.
///     Bar 32.6750.
/// 11. set-back, 60°: (13 + 4.5) π/3 = 18.3260; V = 18.3260 × 63.6173 = 1165.85. Bar 5.7866.
/// 12. hanging ring, 322°: (26 + 9)/2 × 322/180 π = 98.3493; V = 6256.71. Bar 31.0548.
/// 13. scarf: 6 of bar. With scale 6/0.95 = 6.3158.
///
/// Set back as the gate hook's eye is, with R = ρ = 17.5, it meets the neck where cos γ = R/(R + t/2) = 17.5/22: γ is
/// 37.3°, and it goes round by 322.7°. The 6 of bar for the scarf are 6 × 212.0773/63.6173 = 20.0 of 9 round.
const CLOCHE_LIFTER: HandWorked = HandWorked {
    file_name: "cloche-lifter.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[
        6.125, 14.834, 54.752, 76.084, 96.084, 172.108, 170.627, 170.627, 192.108, 224.783, 230.570, 261.624, 267.940,
    ],
};

/// In inches, 1 - s = 0.991. An upright and a peg of 1/2 in square, one on the other: 2 (1/2 + 1) = 3 around, and twice 1/8
/// for butted ends: 3.25/0.991.
const BEAN_FRAME_COLLAR: HandWorked =
    HandWorked { file_name: "bean-frame.plan.json", bar: 0, unit_mm: INCH, marks: &[3.27952] };

/// In inches, 1 - s = 0.99. A grip of two straps, 1/2, and one and a half diameters for each head: (1/2 + 2 × 3/8)/0.99.
const BEAN_FRAME_RIVET: HandWorked =
    HandWorked { file_name: "bean-frame.plan.json", bar: 1, unit_mm: INCH, marks: &[1.26263] };

/// In inches. S = 1/4, as thick as all of it, so that areas compare; 1 - s = 0.99.
///
/// 1. eye, 1 3/4 long, 1 wide at its ends and 1 11/32 along 3/4 of its middle: 7/4 + 11/32 × (7/4 + 3/4)/2 = 2.179688; less
///    the square, 21/64 to 11/32, on the average (43/128)² = 0.112854, drifted: 2.066833. Bar 2.087710. 5. is like it.
/// 2. arm: 8. 4. is like it.
/// 3. rivet hole: drilled, so the bar holds all of its inch: 1/0.99 = 1.010101.
///
/// Drifted, the slit of 2 × 43/128 × 0.95 = 0.638281 gets shorter by 0.302344: the eye is slit in 1 3/4 + 0.302344 = 2.05 of
/// plain bar, which with scale are 2.07, and 1 11/32 - 43/128 = 1.008 wide: nothing is upset for it.
const BEAN_FRAME_STRAP: HandWorked = HandWorked {
    file_name: "bean-frame.plan.json",
    bar: 2,
    unit_mm: INCH,
    marks: &[2.08771, 10.08771, 11.09781, 19.09781, 21.18552],
};

/// In inches. S = 1/4, 1 - s = 0.98.
///
/// 1. point, 3 long: a third of its length, 1/0.98 = 1.020408; 2. leg: 57.
/// 3. tenon, 19/64 to 5/16, on the average 39/128: (39/128)² × (1/4 + 15/32) = 0.092834 × 0.71875 = 0.066725.
///    Bar 0.066725/0.98/S = 0.272346.
const BEAN_FRAME_UPRIGHT: HandWorked =
    HandWorked { file_name: "bean-frame.plan.json", bar: 3, unit_mm: INCH, marks: &[1.02041, 58.02041, 58.29275] };

/// In inches. S = 1/4, 1 - s = 0.98.
///
/// 1. horn, 2 long, square 1/4 to 1/2: 2/3 (1/16 + 1/8 + 1/4) = 0.291667. Bar 0.291667/0.98/S = 1.190476.
/// 2. bend, plain: (3/8 + 1/4) π/2 = 0.981748. 3. shank: 2. 4. hold: 6.
const BEAN_FRAME_PEG: HandWorked = HandWorked {
    file_name: "bean-frame.plan.json",
    bar: 4,
    unit_mm: INCH,
    marks: &[1.19048, 2.17222, 4.17222, 10.17222],
};

/// In mm. S = 144, 1 - s = 0.96: each volume is divided by 138.24.
///
/// 1. arc: 60° × (70 + 6) = 79.5870, plain. 7. is like it; 3. and 5., of 120°, are twice as long.
/// 2. boss: 30 × 17 = 510, less four corners of 8 × 2.5/2 = 10: 470; × 8 = 3760, punched, so that the slug is bar too.
///    Bar 27.1991. 4. and 6. are like it.
/// 8. scarf: 12 of bar. With scale 12/0.96 = 12.5.
const POT_STAND_RING: HandWorked = HandWorked {
    file_name: "pot-stand.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[79.587, 106.786, 265.960, 293.159, 452.333, 479.532, 559.119, 571.619],
};

/// In mm. S = 144, 1 - s = 0.97: each volume is divided by 139.68.
///
/// 1. tenon, 8 to 8.5, on the average 8.25: π/4 × 8.25² × (8 + 13) = 1122.579. Bar 8.0368.
/// 2. shank: 110.
/// 3. knee: 60° × (40 + 6) = 48.1711, plain.
/// 4. foot, square 12 to 12 × 4: M = (12 × 4 + 12 × 12)/2 = 96, so its mean area is (144 + 96 + 48)/3 = 96. Its line runs
///    from 8 to 30 in 1 1/4 turns: a = 22/(2.5 π) = 2.80113; with F(r) = (r √(r² + a²) + a² ln(r + √(r² + a²)))/2 it is
///    (F(30) - F(8))/a = (468.028 - 44.897)/2.80113 = 151.057 long. V = 14501.5. Bar 103.819.
const POT_STAND_LEG: HandWorked = HandWorked {
    file_name: "pot-stand.plan.json",
    bar: 1,
    unit_mm: MILLIMETER,
    marks: &[8.037, 118.037, 166.208, 270.027],
};

/// In mm. S = 40 × 8 = 320, 1 - s = 0.97: each volume is divided by 310.4.
///
/// 1. rest: the bar holds the blank, 82 × 60 × 4 = 19 680. Bar 63.4021. Its outline: 80 × 60, less two rounded corners of
///    4² (1 - π/4) = 3.4336, less two notches of 16 × 12 + 6² π/2 = 248.5487: 4296.0354 mm², so 623.9646 are cut away.
/// 2. bow: 36 × 60 × 4 = 8640. Bar 27.8351. Its inside radius is 36/(π/2) - 2 = 20.92.
/// 3. back: 40 × (60 + 40)/2 × 4 = 8000. Bar 25.7732.
/// 4. strap: 20.
/// 5. lower screw hole: drilled, so the bar holds all of 30 × 40 × 8 = 9600. Bar 30.9278.
/// 6. between the screws: 40; 7. upper screw hole: as the lower one; 8. end: 20.
const DIBBER_RACK: HandWorked = HandWorked {
    file_name: "dibber-rack.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[63.4021, 91.2372, 117.0103, 137.0103, 167.9381, 207.9381, 238.8659, 258.8659],
};

/// In mm. S = 100, 1 - s = 0.97.
///
/// 1. point: 100 × 60/3 = 2000. Bar 20.6186.
/// 2. stake: 220.
/// 3. plate: the bar holds the blank, 72 × 28 × 2.5 = 5040. Bar 51.9588. Its outline: 70 × 20, and above it an arc of 40°
///    over 70: R = 35/sin 20° = 102.333, R² (0.698132 - 0.642788)/2 = 289.8; 1689.8 of 2016 mm² stay.
const ROW_LABEL: HandWorked = HandWorked {
    file_name: "dibber-rack.plan.json",
    bar: 1,
    unit_mm: MILLIMETER,
    marks: &[20.6186, 240.6186, 292.5774],
};

/// In mm. S = 12 × 18 = 216, 1 - s = 0.97: each volume is divided by 209.52. All marks but that of the corner are fixed: they were typed.
///
/// 1. leaf, L 60, W 24: R = (30² + 12²)/24 = 43.5; sin φ = 30/43.5, φ = 0.761013; A = 43.5² (2 φ - sin 2φ) = 990.053. Its thickness
///    gives: 18 × 209.52/1.05/990.053 = 3.628. Mark 18.
/// 2. neck: its length gives, 32 × 209.52 / (π/4 × 81) = 105.390. Mark 50.
/// 3. arm: 100 × 209.52/144 = 145.5. Mark 150.
/// 4. corner, t = w = 12, r 2, 90°: V = 12 [14² tan 45° - 2² π/4] = 12 (196 - 3.141593) = 2314.301. Bar 11.0457.
/// 5. wall leg: what is left to 230, 68.9543.
/// 6. plate shoulder, one side, r 3: 12 × 8 × 3 = 288; one fillet 12 × 9 (1 - π/4) = 23.177; V = 311.177. Bar 1.4852.
/// 7. wall plate, to 260; 8. rest: 150.
const LANTERN_ARM: HandWorked = HandWorked {
    file_name: "lantern-arm.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[18.0, 50.0, 150.0, 161.046, 230.0, 231.485, 260.0, 410.0],
};

/// In mm. S = 256, 1 - s = 0.97.
///
/// 1. point: 256 × 90/3 = 7680. Bar 30.9278.
/// 2. shank: 240. The slit starts here, and the thorn is cut free.
/// 3. slit: 30, its root rounded with the file: nothing is lost. Bar 30.
///    The cut is 5 mm in, so the thorn has 5 × 16 = 80 mm² of the bar, 2400 mm³ of it.
///    root, 8 round: L = (10 + 4) π/4 = 10.9956; V = L × 16 π = 552.70. Of the sliver 552.70/0.97/80 = 7.1224.
///    spike: the sliver's other 22.8776, 1830.21; with 8 % of scale 1683.79, over π/12 (9 + 24 + 64) = 25.3946: 66.30 long.
///    back: all 30 of it as it is cut.
/// 4. head: 50.
const NET_STAKE: HandWorked = HandWorked {
    file_name: "net-stake.plan.json",
    bar: 0,
    unit_mm: MILLIMETER,
    marks: &[30.9278, 270.9278, 300.9278, 293.8054, 300.9278, 300.9278, 350.9278],
};

/// Every bar that was worked by hand: all of them.
pub(crate) const ALL: [HandWorked; 24] = [
    GATE_HOOK,
    TRELLIS_BRACKET,
    ROW_MARKER_STAKE,
    ROW_MARKER_PLATE,
    LINE_PIN,
    DIBBER,
    BOOT_SCRAPER,
    TROWEL,
    TWINE_STAKE,
    WEEDING_FORK,
    HERB_BRACKET,
    DRAW_HOE,
    CLOCHE_LIFTER,
    BEAN_FRAME_COLLAR,
    BEAN_FRAME_RIVET,
    BEAN_FRAME_STRAP,
    BEAN_FRAME_UPRIGHT,
    BEAN_FRAME_PEG,
    POT_STAND_RING,
    POT_STAND_LEG,
    DIBBER_RACK,
    ROW_LABEL,
    LANTERN_ARM,
    NET_STAKE,
];
