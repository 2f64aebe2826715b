//! Puts what the flow has laid out on pages, and makes the tree of tags from where it went.

use crate::record::write_error::WriteError;
use std::num::NonZeroU16;

use krilla::Document;
use krilla::color::rgb;
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Rect, Size, Transform};
use krilla::image::Image;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, SpanTag, TableHeaderScope, Tag as PdfTag, TagGroup, TagTree,
};
use krilla::text::{Font, TextDirection};

use super::flow::{BLACK, BlockKind, FlowInside, Op, PAGE, PageFlow, PagePoint, PdfColour, Tag};
use super::text::{Face3, Fonts};

/// Points in a millimetre.
const POINTS: f32 = 72.0 / 25.4;

/// Paints every page; where each section begins comes back.
pub(super) fn paint(document: &mut Document, flow: PageFlow) -> Result<Vec<(String, XyzDestination)>, WriteError> {
    let font = |face| Font::new(Fonts::file(face).to_vec().into(), 0).ok_or(WriteError::Part("a font is damaged"));
    let fonts = [font(Face3::Plain)?, font(Face3::Bold)?, font(Face3::Mono)?];
    let settings =
        PageSettings::from_wh(PAGE.0 * POINTS, PAGE.1 * POINTS).ok_or(WriteError::Part("the page has no size"))?;
    let mut leaves: Vec<Option<Identifier>> = vec![None; flow.leaves];
    for ops in flow.pages {
        let mut page = document.start_page_with(settings.clone());
        let mut surface = page.surface();
        for op in ops {
            draw(&mut surface, &fonts, op, &mut leaves)?;
        }
        surface.finish();
        page.finish();
    }
    let mut tree = TagTree::new();
    tree.push(group(&flow.tags, 0, &leaves));
    document.set_tag_tree(tree);
    let at = |y: f32| Point::from_xy(0.0, (y - 2.0).max(0.0) * POINTS);
    Ok(flow.marks.into_iter().map(|(title, page, y)| (title, XyzDestination::new(page, at(y)))).collect())
}

fn group(tags: &[Tag], node: usize, leaves: &[Option<Identifier>]) -> TagGroup {
    let mut group = match &tags[node].kind {
        BlockKind::Section => TagGroup::new(PdfTag::Section),
        BlockKind::Heading(level, title) => {
            TagGroup::new(PdfTag::Hn(NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN), Some(title.clone())))
        }
        BlockKind::Paragraph => TagGroup::new(PdfTag::P),
        BlockKind::Table => TagGroup::new(PdfTag::Table),
        BlockKind::Row => TagGroup::new(PdfTag::TR),
        BlockKind::Head(row) => {
            TagGroup::new(PdfTag::TH(if *row { TableHeaderScope::Row } else { TableHeaderScope::Column }))
        }
        BlockKind::Cell => TagGroup::new(PdfTag::TD),
        BlockKind::Figure(says) => TagGroup::new(PdfTag::Figure(Some(says.clone()))),
    };
    for inside in &tags[node].inside {
        match inside {
            FlowInside::Tag(child) => group.push(self::group(tags, *child, leaves)),
            FlowInside::Leaf(leaf) => {
                if let Some(id) = leaves[*leaf] {
                    group.push(id);
                }
            }
        }
    }
    group
}

fn draw(surface: &mut Surface, fonts: &[Font; 3], op: Op, leaves: &mut [Option<Identifier>]) -> Result<(), WriteError> {
    let decoration = ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout));
    match op {
        Op::Text { at, size, face, colour, text, leaf } => {
            let content = if leaf.is_some() { ContentTag::Span(SpanTag::empty()) } else { decoration };
            let id = surface.start_tagged(content);
            fill(surface, colour);
            let font = fonts[face as usize].clone();
            surface.draw_text(point(at), font, size * POINTS, &text, false, TextDirection::Auto);
            surface.end_tagged();
            if let Some(leaf) = leaf {
                leaves[leaf] = Some(id);
            }
        }
        Op::Rect { at, size, colour } => {
            surface.start_tagged(decoration);
            rect(surface, at, size, colour);
            surface.end_tagged();
        }
        Op::Picture { at, size, jpeg, leaf } => {
            let image = Image::from_jpeg(jpeg.into(), false).map_err(WriteError::Picture)?;
            let size =
                Size::from_wh(size.0 * POINTS, size.1 * POINTS).ok_or(WriteError::Part("a picture has no size"))?;
            leaves[leaf] = Some(surface.start_tagged(ContentTag::Other));
            surface.push_transform(&Transform::from_translate(at.0 * POINTS, at.1 * POINTS));
            surface.draw_image(image, size);
            surface.pop();
            surface.end_tagged();
        }
        Op::Figure { rects, strokes, leaf } => {
            leaves[leaf] = Some(surface.start_tagged(ContentTag::Other));
            for (at, size) in rects {
                rect(surface, at, size, BLACK);
            }
            for line in strokes {
                stroke(surface, &line);
            }
            surface.end_tagged();
        }
    }
    Ok(())
}

fn point((x, y): PagePoint) -> Point {
    Point::from_xy(x * POINTS, y * POINTS)
}

fn ink([red, green, blue]: PdfColour) -> rgb::Color {
    rgb::Color::new(red, green, blue)
}

fn fill(surface: &mut Surface, colour: PdfColour) {
    surface.set_stroke(None);
    surface.set_fill(Some(Fill { paint: ink(colour).into(), opacity: NormalizedF32::ONE, rule: FillRule::NonZero }));
}

fn rect(surface: &mut Surface, (left, top): PagePoint, (wide, high): PagePoint, colour: PdfColour) {
    let path: Option<Path> =
        Rect::from_xywh(left * POINTS, top * POINTS, wide * POINTS, high * POINTS).and_then(|rect| {
            let mut path = PathBuilder::new();
            path.push_rect(rect);
            path.finish()
        });
    if let Some(path) = path {
        fill(surface, colour);
        surface.draw_path(&path);
    }
}

fn stroke(surface: &mut Surface, line: &[PagePoint]) {
    let mut path = PathBuilder::new();
    for (k, (x, y)) in line.iter().enumerate() {
        if k == 0 {
            path.move_to(x * POINTS, y * POINTS);
        }
        // A line to its own beginning makes a dot visible.
        path.line_to(x * POINTS, y * POINTS);
    }
    let Some(path) = path.finish() else { return };
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint: ink(BLACK).into(),
        width: 0.5 * POINTS,
        line_cap: LineCap::Round,
        line_join: LineJoin::Round,
        ..Stroke::default()
    }));
    surface.draw_path(&path);
    surface.set_stroke(None);
}
