import Foundation
import StillbarCore
@testable import StillbarKit

/// Plays the core's journeys (`core/src/journey.rs` tells their form) on the page and the form, as a thumb does on the views.
@MainActor struct Player {
    let rig: Rig
    /// Called after every line that acts.
    var between: (_ line: String) throws -> Void = { _ in }

    init(_ rig: Rig) {
        self.rig = rig
    }

    static func lines(_ script: String) -> [String] {
        script.split(separator: "\n").map { $0.trimmed }.filter { !$0.isEmpty && !$0.hasPrefix("#") }
    }

    func play(_ script: String) async throws {
        for line in Player.lines(script) {
            do {
                try await step(line)
            } catch {
                throw Failed("\"\(line)\": \(error)\n\n\(rig.text)")
            }
            rig.device.pass(2000)
        }
    }

    private func step(_ line: String) async throws {
        guard let (verb, rest) = line.cut(at: " ") else { throw Failed("a line has a verb and what it is about") }
        let pair = rest.cut(at: " = ")
        let (label, value) = pair ?? (rest, "")
        switch verb {
        case "tap":
            await rig.shell.act(try action(rest))
            if rig.shell.panel?.scanning == false { await shoot(Repository.photo) }
        case "photo":
            await rig.shell.act(try shutter(label))
            guard rig.shell.panel?.scanning == false else { throw Failed("no photo was asked for") }
            await shoot(pair == nil ? Repository.photo : try Codes.photo(value))
        case "scan":
            await rig.shell.act(try action(label))
            guard rig.shell.panel?.scanning == true else { throw Failed("no camera was asked for") }
            await rig.camera.see(try Codes.frame(value))
        case "fill": rig.form.type(value, in: try field(label))
        case "choose": try pick(value, from: try found(tiles.first { $0.asked == label }, "question"))
        case "read": try read(label, value)
        case "sign": rig.form.sign(value, in: try signature(label))
        case "wait": rig.device.pass(Int64(rest)! * 60_000)
        case "see":
            guard rig.text.contains(rest) else { throw Failed("this is not on the screen") }
            guard plain(Shown.on(rig)).contains(plain(rest)) else { throw Failed("this is not on the page, which has\n\(Shown.on(rig))") }
        case "unseen":
            guard !rig.text.contains(rest) else { throw Failed("this is on the screen") }
        default: throw Failed("there is no such verb")
        }
        if ["tap", "photo", "scan"].contains(verb) { try between(line) }
    }

    private func shoot(_ photo: Data) async {
        rig.shell.shoot()
        await rig.camera.see(.photo(photo))
    }

    /// The action of the one button or row of this label.
    func action(_ label: String) throws -> String {
        let all = rig.page.all.compactMap { part -> (label: String, action: String)? in
            switch part.kind {
            case .press(let press) where !press.takesPhoto: (press.label, press.action)
            case .box(let box) where !box.action.isEmpty: (box.label, box.action)
            default: nil
            }
        }
        let exact = all.filter { $0.label == label }
        let within = all.filter { $0.label.contains(label) }
        if exact.count == 1 || (exact.isEmpty && within.count == 1) { return (exact + within)[0].action }
        throw Failed(within.isEmpty ? "there is no such button" : "more than one button has this label")
    }

    private func shutter(_ label: String) throws -> String {
        let all = rig.page.all.compactMap { if case .press(let press) = $0.kind, press.takesPhoto { press } else { nil } }
        return try found(all.first { $0.label == label }, "place for a photo").action
    }

    private func field(_ label: String) throws -> TypeIn {
        let all = rig.page.parts.compactMap { if case .field(let field) = $0.kind { field } else { nil } }
        return try found(all.first { $0.label == label }, "field")
    }

    private func signature(_ label: String) throws -> String {
        let all = rig.page.parts.compactMap { if case .signature(let place) = $0.kind { place } else { nil } }
        return try found(all.first { $0.label == label }, "place to sign").field
    }

    /// Those of questions; those of readings are in cards.
    private var tiles: [Tiles] { rig.page.parts.compactMap { if case .tiles(let tiles) = $0.kind { tiles } else { nil } } }

    private func read(_ label: String, _ value: String) throws {
        let cards = rig.page.parts.compactMap { if case .card(let inside) = $0.kind { inside } else { nil } }
        let card = try found(cards.first { if case .text(label, .strong) = $0[0].kind { true } else { false } }, "pair")
        for part in card {
            switch part.kind {
            case .tiles(let tiles) where tiles.options.contains { $0.label == value }: return try pick(value, from: tiles)
            case .field(let field): return rig.form.type(value, in: field)
            default: continue
            }
        }
        throw Failed("there is no such answer")
    }

    private func pick(_ label: String, from tiles: Tiles) throws {
        rig.form.tap(try found(tiles.options.first { $0.label == label }, "answer"), of: tiles)
    }

    private func found<T>(_ thing: T?, _ name: String) throws -> T {
        guard let thing else { throw Failed("there is no such \(name)") }
        return thing
    }

    /// The text form of a screen has marks of its own; on the page the same words stand with other punctuation.
    private func plain(_ text: String) -> String {
        text.replacing("[deviation] ", with: "").filter { !"[]>.#".contains($0) }.split(whereSeparator: \.isWhitespace).joined(separator: " ")
    }
}

extension StringProtocol {
    var trimmed: String { trimmingCharacters(in: .whitespacesAndNewlines) }

    func cut(at mark: String) -> (String, String)? {
        range(of: mark).map { (String(self[..<$0.lowerBound]), String(self[$0.upperBound...])) }
    }
}
