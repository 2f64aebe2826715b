import StillbarCore
@testable import StillbarKit

/// What a page shows and what VoiceOver says of it.
@MainActor enum Shown {
    static func on(_ rig: Rig) -> String { words(rig.page, rig.form).joined(separator: "\n") }

    static func words(_ page: Page, _ form: Form) -> [String] {
        [page.title, page.context] + page.all.flatMap { words($0, form) }
    }

    /// What is wrong with a page, as somebody who looks at it and listens to it would notice.
    static func faults(_ rig: Rig) -> [String] {
        let (page, shown) = (rig.page, words(rig.page, rig.form))
        let ids = page.all.flatMap { [$0.id] + insides($0) }
        let twice = Dictionary(grouping: ids) { $0 }.filter { $1.count > 1 }.keys.map { "two things are called \($0)" }
        let silent = page.all.filter { names($0).contains("") || names($0).isEmpty }.map { "\($0.id) says nothing" }
        let dropped = told(rig.shell.screen!).filter { text in !shown.contains { $0.contains(text) } }.map { "\"\($0)\" is not shown" }
        return twice + silent + dropped
    }

    private static func words(_ part: Part, _ form: Form) -> [String] {
        switch part.kind {
        case .text(let text, _): [text]
        case .box(let box): box.lines.map(\.text) + [box.said, box.label]
        case .press(let press): [press.label]
        case .tiles(let tiles): [tiles.asked] + tiles.options.flatMap { [$0.label, $0.said] }
        case .field(let field): [field.label, field.hint, form.text(field.field)]
        case .clash(let field): form.clashes(field) ? [Words.clash] : []
        case .drawing(let sketch, let said): [said] + sketch.strokes.compactMap { if case .text(let text, _, _) = $0.figure { text } else { nil } }
        case .photos(let photos): photos.map(\.said)
        case .signature(let place): [place.label, form.text(place.field)]
        case .card: []
        }
    }

    /// What VoiceOver calls each thing of a part.
    private static func names(_ part: Part) -> [String] {
        switch part.kind {
        case .text(let text, _): [text]
        case .box(let box): [box.said] + (box.action.isEmpty ? [] : [box.label])
        case .press(let press): [press.label]
        case .tiles(let tiles): tiles.options.map(\.said)
        case .field(let field): [field.label]
        case .drawing(_, let said): [said]
        case .photos(let photos): photos.map(\.said)
        case .signature(let place): [place.label]
        case .clash, .card: ["as its insides say"]
        }
    }

    private static func insides(_ part: Part) -> [String] {
        switch part.kind {
        case .tiles(let tiles): tiles.options.map(\.id)
        case .photos(let photos): photos.map(\.id)
        default: []
        }
    }

    /// Every text of a screen that is for people, whatever record it is in: a kind of block that the page forgets comes out here.
    private static func told(_ thing: Any, _ name: String? = nil) -> [String] {
        let unseen: Set = ["id", "action", "field", "sha256", "route", "hand", "language", "done"]
        if let name, unseen.contains(name) { return [] }
        if let text = thing as? String { return text.isEmpty ? [] : [text] }
        // The values of answers are for the core; their labels are for people.
        if let option = thing as? Opt { return [option.label] }
        if let choice = thing as? Choice { return [choice.label] + choice.options.map(\.label) }
        if let row = thing as? PadRow { return [row.label, row.hint] }
        if case .mark(_, _, let label, _)? = thing as? Block { return [label] }
        if thing as? Drawing != nil { return [] }
        return Mirror(reflecting: thing).children.flatMap { told($0.value, $0.label) }
    }
}
