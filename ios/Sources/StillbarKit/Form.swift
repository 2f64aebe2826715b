import Foundation
import Observation
import StillbarCore

/// What the person gave on one screen. Every change goes on as a draft at once, so that nothing typed is lost with the process; the
/// whole goes along with the next act.
@MainActor @Observable public final class Form {
    /// Counts what was given, so that nothing is shown over it.
    @ObservationIgnored private(set) var changes = 0
    /// By field, in the order of the screen.
    private var values: [(field: String, value: String)] = []
    // Of a reading in volts and an answer the number counts.
    private var typed: [String: String] = [:]
    private var picked: [String: [String]] = [:]
    // Of a signature what was drawn counts; a typed name stands in for it.
    private var drawn: [String: String] = [:]
    private var clashing: Set<String> = []
    @ObservationIgnored private var last = (x: 0, y: 0)
    @ObservationIgnored private let draft: (_ field: String, _ value: String) -> Void

    /// The value of a signature that was typed begins so; a drawn one is all figures.
    private static let mark = "typed:"
    /// Most points of a signature.
    private static let points = 4000
    /// Most letters of a name.
    private static let name = 120

    init(_ screen: Screen, draft: @escaping (_ field: String, _ value: String) -> Void) {
        self.draft = draft
        add(screen)
    }

    /// Takes in the fields of a screen that are new here; what was given in the others stays.
    func add(_ screen: Screen) {
        let known = Set(values.map(\.field))
        for block in screen.blocks {
            switch block {
            case .entry(_, let entry) where !known.contains(entry.field):
                begin(entry.field, entry.value)
                typed[entry.field] = entry.value
            case .choice(_, let choice) where !known.contains(choice.field):
                begin(choice.field, choice.chosen.joined(separator: "\n"))
                picked[choice.field] = choice.chosen
            case .pad(_, let pad):
                for row in pad.rows where !known.contains(row.field) {
                    begin(row.field, row.chosen)
                    let answer = pad.options.contains { $0.value == row.chosen }
                    if answer { picked[row.field] = [row.chosen] } else { typed[row.field] = row.chosen }
                }
            case .mark(_, let field, _, let value) where !known.contains(field):
                begin(field, value)
                if value.hasPrefix(Form.mark) { typed[field] = String(value.dropFirst(Form.mark.count)) } else { drawn[field] = value }
            default: break
            }
        }
    }

    /// All values, for an act.
    public var filled: [Filled] { values.map { Filled(field: $0.field, value: $0.value) } }

    public func text(_ field: String) -> String { typed[field] ?? "" }

    public func isChosen(_ tile: Tiles.Tile, of tiles: Tiles) -> Bool { picked[tiles.field]?.contains(tile.value) ?? false }

    /// Whether an answer was tapped beside a number.
    public func clashes(_ field: String) -> Bool { clashing.contains(field) }

    public func strokes(_ field: String) -> String { drawn[field] ?? "" }

    public func type(_ text: String, in entry: TypeIn) {
        typed[entry.field] = String(String.UnicodeScalarView(text.unicodeScalars.prefix(entry.limit)))
        clashing.remove(entry.field)
        // Beside a number no answer looks chosen.
        if hasNumber(entry.field), picked[entry.field] != nil { picked[entry.field] = [] }
        keep(entry.field)
    }

    public func tap(_ tile: Tiles.Tile, of tiles: Tiles) {
        // None replaces a number by a slip of the thumb.
        if !tiles.many, hasNumber(tiles.field) {
            clashing.insert(tiles.field)
            return
        }
        let before = picked[tiles.field] ?? []
        let others = before.filter { $0 != tile.value }
        let after = !tiles.many ? [tile.value] : others.count == before.count ? others + [tile.value] : others
        // In the order of the answers, however they were tapped.
        picked[tiles.field] = tiles.options.map(\.value).filter(after.contains)
        keep(tiles.field)
    }

    /// A finger went to `spot` (0 to 1 across and down), down on the paper with `begins`.
    public func draw(_ spot: Sketch.Spot, in field: String, begins: Bool) {
        let strokes = drawn[field] ?? ""
        guard strokes.utf8.count(where: { $0 == 0x20 || $0 == 0x3B }) < Form.points else { return }
        let (x, y) = (Form.within(spot.x, Sketch.Figure.across), Form.within(spot.y, Sketch.Figure.down))
        if !begins, hypot(Double(x - last.x), Double(y - last.y)) < 4 { return }
        last = (x, y)
        changes += 1
        drawn[field] = strokes + (strokes.isEmpty ? "" : begins ? ";" : " ") + "\(x),\(y)"
    }

    /// The finger is off the paper.
    public func lift(_ field: String) { keepMark(field) }

    public func clear(_ field: String) {
        drawn[field] = ""
        keepMark(field)
    }

    public func sign(_ name: String, in field: String) {
        typed[field] = String(name.prefix(Form.name))
        keepMark(field)
    }

    private static func within(_ share: Double, _ most: Int) -> Int { Int((min(max(share, 0), 1) * Double(most)).rounded()) }

    private func hasNumber(_ field: String) -> Bool { typed[field].map { !$0.allSatisfy(\.isWhitespace) } ?? false }

    private func keep(_ field: String) {
        set(field, hasNumber(field) ? typed[field]! : picked[field]?.joined(separator: "\n") ?? typed[field] ?? "")
    }

    private func keepMark(_ field: String) {
        let name = (typed[field] ?? "").trimmingCharacters(in: .whitespacesAndNewlines)
        let strokes = drawn[field] ?? ""
        set(field, strokes.isEmpty ? (name.isEmpty ? "" : Form.mark + name) : strokes)
    }

    private func begin(_ field: String, _ value: String) {
        values.removeAll { $0.field == field }
        values.append((field, value))
    }

    private func set(_ field: String, _ value: String) {
        guard let at = values.firstIndex(where: { $0.field == field }), values[at].value != value else { return }
        values[at].value = value
        changes += 1
        draft(field, value)
    }
}
