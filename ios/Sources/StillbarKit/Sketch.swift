import StillbarCore

/// A drawing or a sign as the one canvas paints it, first stroke to last, in units of its own.
public struct Sketch: Equatable, Sendable {
    public struct Spot: Equatable, Sendable {
        public let x: Double
        public let y: Double

        public init(_ x: Double, _ y: Double) {
            self.x = x
            self.y = y
        }
    }

    public enum Figure: Equatable, Sendable {
        case path([Spot], closed: Bool)
        case circle(Spot, r: Double)
        case box(Spot, w: Double, h: Double, corner: Double)
        /// `Spot` is the middle of the base line.
        case text(String, Spot, size: Double)
    }

    public struct Stroke: Equatable, Sendable {
        public let figure: Figure
        public let shade: Shade
        /// Of the line, which has round ends; 0 is a filled form.
        public let thick: Double
        public let dashed: Bool

        init(_ figure: Figure, _ shade: Shade, thick: Double = 0, dashed: Bool = false) {
            self.figure = figure
            self.shade = shade
            self.thick = thick
            self.dashed = dashed
        }
    }

    public let width: Double
    public let height: Double
    public let strokes: [Stroke]

    /// A wider one has letters that are too small to read on a phone: it is made larger in steps, and moved.
    public var isWide: Bool { width > 400 }

    /// The next step from `zoom`, which is 1 at first.
    public static func step(_ zoom: Double, larger: Bool) -> Double { min(max(larger ? zoom * 1.6 : zoom / 1.6, 1), 4) }
}

extension Sketch {
    init(_ drawing: Drawing) {
        width = Double(max(drawing.width, 1))
        height = Double(max(drawing.height, 1))
        // A dark conductor on dark paper, or the other way round, is told from it by a rim.
        let wider = 1 + width / 200
        strokes = drawing.shapes.flatMap { shape in
            let rimmed = [.brown, .black, .grey, .blue, .green].contains(shape.ink)
            return (rimmed ? shape.strokes(.rim, wider: wider) : []) + shape.strokes(.of(shape.ink), wider: 0)
        }
    }

    /// A signature as the core keeps it: `x,y x,y;x,y` on 1000 by 400.
    public init(signature: String) {
        width = Double(Figure.across)
        height = Double(Figure.down)
        strokes = signature.split(separator: ";").compactMap { stroke in
            let spots = stroke.split(separator: " ").compactMap { point -> Spot? in
                let pair = point.split(separator: ",").compactMap { Double($0) }
                return pair.count == 2 ? Spot(pair[0], pair[1]) : nil
            }
            // A line to its own beginning makes a dot visible.
            return spots.first.map { Stroke(.path([$0] + spots, closed: false), .ink, thick: 9) }
        }
    }
}

extension Sketch.Figure {
    static let across = 1000
    static let down = 400
}

extension Shape {
    fileprivate var ink: Ink {
        switch self {
        case .line(_, _, _, _, _, let ink), .circle(_, _, _, _, _, let ink), .box(_, _, _, _, _, _, let ink), .text(_, _, _, _, let ink): ink
        }
    }

    fileprivate func strokes(_ shade: Shade, wider: Double) -> [Sketch.Stroke] {
        switch self {
        case .line(let x1, let y1, let x2, let y2, let thick, _):
            let ends = [Sketch.Spot(Double(x1), Double(y1)), Sketch.Spot(Double(x2), Double(y2))]
            return [Sketch.Stroke(.path(ends, closed: false), shade, thick: Double(thick) + wider)]
        case .circle(let x, let y, let r, let thick, let filled, _):
            let out = filled ? wider / 2 : 0
            return [Sketch.Stroke(.circle(Sketch.Spot(Double(x), Double(y)), r: Double(r) + out), shade, thick: filled ? 0 : Double(thick) + wider)]
        case .box(let x, let y, let w, let h, let thick, let filled, _):
            let out = filled ? wider / 2 : 0
            let corner = Sketch.Spot(Double(x) - out, Double(y) - out)
            let figure = Sketch.Figure.box(corner, w: Double(w) + 2 * out, h: Double(h) + 2 * out, corner: 0)
            return [Sketch.Stroke(figure, shade, thick: filled ? 0 : Double(thick) + wider)]
        case .text(let x, let y, let size, let text, _):
            // Letters have no outline on this canvas: their rim is the same letters, a little aside.
            let aside = wider / 2
            let places = wider == 0 ? [(0, 0)] : [(-aside, -aside), (aside, -aside), (-aside, aside), (aside, aside)]
            return places.map { Sketch.Stroke(.text(text, Sketch.Spot(Double(x) + $0.0, Double(y) + $0.1), size: Double(size)), shade) }
        }
    }
}
