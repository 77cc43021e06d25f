//! The picture on the screen: drawn anew only when the piece, the camera, the window, the look or what is lit has changed.

use super::model::Model;
use super::place::{Place, Whole};
use crate::theme::{Theme, UNTINTED, picture, see_through, space};
use egui::{Rect, TextureHandle, TextureOptions, Ui, pos2};
use fh_piece::raster::{Picture, Sight};

/// From how many pixels for a point on, edges are smooth enough as they are.
const FINE_SCREEN: f32 = 1.75;

/// What a picture was drawn from.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Shot {
    stamp: u64,
    sight: Sight,
    size: [usize; 2],
    /// So many pixels by so many are drawn for one.
    finer: usize,
    line: usize,
}

/// What a picture was colored by.
#[derive(Clone, PartialEq)]
struct Dye {
    theme: Theme,
    selected: Vec<Whole>,
    pointed_at: Option<Place>,
}

/// The picture and its texture.
#[derive(Default)]
pub(super) struct Image {
    picture: Picture,
    pixels: Vec<[u8; 4]>,
    texture: Option<TextureHandle>,
    shot: Option<Shot>,
    dye: Option<Dye>,
    lets_through: bool,
}

impl Image {
    /// Whether what lies behind the metal is seen through it.
    pub(super) fn see_through(&mut self, on: bool) {
        self.lets_through = on;
    }

    /// Draws the piece over a part of the window. While it moves it is drawn more coarsely.
    pub(super) fn paint(
        &mut self,
        ui: &Ui,
        rect: Rect,
        model: &Model,
        sight: &Sight,
        theme: &Theme,
        (selected, pointed_at): (Vec<Whole>, Option<Place>),
    ) {
        let dense = ui.ctx().pixels_per_point();
        let size = [rect.width(), rect.height()].map(|points| (points * dense).round().max(1.0) as usize);
        let moves = self.shot.is_some_and(|shot| shot.sight != sight.enlarged(f64::from(dense) * shot.finer as f64));
        let finer = if moves || dense > FINE_SCREEN { 1 } else { 2 };
        let line = (dense * finer as f32 * theme.hairline() / space::HAIRLINE).round().max(1.0) as usize;
        let shot = Shot {
            stamp: model.stamp,
            sight: sight.enlarged(f64::from(dense) * finer as f64),
            size: size.map(|pixels| pixels * finer),
            finer,
            line,
        };
        if moves {
            ui.request_repaint();
        }
        let dye = Dye { theme: theme.clone(), selected, pointed_at };
        let is_drawn = self.shot == Some(shot);
        if !is_drawn {
            self.picture.draw(&model.drawn, &shot.sight, shot.size, line);
            self.shot = Some(shot);
        }
        if !is_drawn || self.dye.as_ref() != Some(&dye) {
            self.color(ui, model, &dye, finer);
            self.dye = Some(dye);
        }
        if let Some(texture) = &self.texture {
            let all = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
            ui.painter().image(texture.id(), rect, all, if self.lets_through { see_through() } else { UNTINTED });
        }
    }

    fn color(&mut self, ui: &Ui, model: &Model, dye: &Dye, finer: usize) {
        let tone = |selected, pointed_at| dye.theme.metal_tone(selected, pointed_at);
        let tones = [tone(false, false), tone(true, false), tone(false, true), tone(true, true)];
        let tone_of = |solid: usize| {
            let Some(place) = model.places.get(solid) else { return 0 };
            let is_selected = dye.selected.iter().any(|whole| whole.holds(*place));
            usize::from(is_selected) + 2 * usize::from(dye.pointed_at == Some(*place))
        };
        self.picture.colored(&tones, tone_of, finer, &mut self.pixels);
        let size = self.picture.size().map(|pixels| pixels / finer);
        let image = picture(size, &self.pixels);
        match &mut self.texture {
            Some(texture) => texture.set(image, TextureOptions::LINEAR),
            None => self.texture = Some(ui.ctx().load_texture("piece", image, TextureOptions::LINEAR)),
        }
    }

    /// The solid that is seen at a place so many points from the picture's left top, and how far toward who looks, in mm.
    pub(super) fn seen_at(&self, [x, y]: [f32; 2], dense: f32) -> Option<(usize, f64)> {
        let times = dense * self.shot?.finer as f32;
        if x < 0.0 || y < 0.0 {
            return None;
        }
        let (column, row) = ((x * times) as usize, (y * times) as usize);
        Some((self.picture.solid_at(column, row)?, self.picture.depth_at(column, row)?))
    }
}
