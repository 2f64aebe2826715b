import StillbarCore

/// Drawn signs. Shapes of ISO 3864 where it has one; words beside them say the same, so VoiceOver skips them.
public enum Sign: Equatable, Sendable, CaseIterable {
    case warn, forbid, must, kept, quiet, now, open, later, deviated, back, onward, camera

    init(_ tone: Tone) {
        switch tone {
        case .warn: self = .warn
        case .forbid: self = .forbid
        case .must: self = .must
        case .plain: self = .kept
        case .quiet: self = .quiet
        }
    }

    /// Nothing is ticked: a full box holds its proof, an empty one does not yet.
    init(_ state: StepState) {
        switch state {
        case .done: self = .kept
        case .now: self = .now
        case .open: self = .open
        case .later: self = .later
        case .deviated: self = .deviated
        case .stop: self = .forbid
        }
    }

    /// What points along the line of reading turns with it.
    public var points: Bool { self == .back || self == .onward }

    /// On 100 by 100, in `ink` where the sign has no colour of its own.
    public func sketch(_ ink: Shade) -> Sketch { Sketch(width: 100, height: 100, strokes: strokes(ink)) }

    private func strokes(_ ink: Shade) -> [Sketch.Stroke] {
        switch self {
        case .warn:
            let triangle = path(50, 7, 96, 89, 4, 89, closed: true)
            return [
                line(triangle, .black, 7), solid(triangle, .yellow),
                solid(path(46, 35, 54, 35, 52, 65, 48, 65, closed: true), .black), solid(circle(76, 5.5), .black),
            ]
        case .forbid:
            return [solid(circle(50, 50), .white), line(circle(50, 38), .red, 13), line(path(22.4, 22.4, 77.6, 77.6), .red, 13)]
        case .must:
            return [
                solid(circle(50, 46), .blue), line(circle(50, 46), .white, 4),
                solid(path(44, 20, 56, 20, 53, 62, 47, 62, closed: true), .white), solid(circle(76, 6.5), .white),
            ]
        case .kept: return [line(square(12), ink), solid(square(28), ink)]
        case .quiet: return [line(square(22), ink)]
        case .now: return [solid(path(14, 10, 48, 10, 88, 50, 48, 90, 14, 90, 48, 50, closed: true), ink)]
        case .open: return [line(square(12), ink)]
        case .later: return [Sketch.Stroke(square(16), ink, thick: 8, dashed: true)]
        case .deviated:
            return [line(path(50, 8, 92, 50, 50, 92, 8, 50, closed: true), ink), solid(path(50, 8, 50, 92, 8, 50, closed: true), ink)]
        case .back: return [line(path(62, 14, 26, 50, 62, 86), ink)]
        case .onward: return [line(path(38, 14, 74, 50, 38, 86), ink)]
        case .camera:
            let body = path(8, 28, 30, 28, 39, 15, 61, 15, 70, 28, 92, 28, 92, 86, 8, 86, closed: true)
            return [line(body, ink), line(circle(56, 17), ink)]
        }
    }
}

private func line(_ figure: Sketch.Figure, _ shade: Shade, _ thick: Double = 11) -> Sketch.Stroke { Sketch.Stroke(figure, shade, thick: thick) }

private func solid(_ figure: Sketch.Figure, _ shade: Shade) -> Sketch.Stroke { Sketch.Stroke(figure, shade) }

private func path(_ at: Double..., closed: Bool = false) -> Sketch.Figure {
    .path(stride(from: 0, to: at.count, by: 2).map { Sketch.Spot(at[$0], at[$0 + 1]) }, closed: closed)
}

private func circle(_ y: Double, _ r: Double) -> Sketch.Figure { .circle(Sketch.Spot(50, y), r: r) }

private func square(_ from: Double) -> Sketch.Figure {
    .box(Sketch.Spot(from, from), w: 100 - 2 * from, h: 100 - 2 * from, corner: 8)
}
