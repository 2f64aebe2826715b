import Foundation
import StillbarCore
import Testing
@testable import StillbarKit

/// What no journey comes by: readings beside answers, signatures, colours, drawings.
@MainActor struct PageTests {
    private func screen(_ blocks: Block...) -> Screen {
        Screen(route: "/", turn: 1, hand: "", language: "en", mirrored: false, title: "A screen", context: "", standing: nil, notice: nil, blocks: blocks, main: nil, up: nil)
    }

    private final class Drafts { var sent: [String] = [] }

    private func form(_ screen: Screen) -> (Form, Drafts) {
        let drafts = Drafts()
        return (Form(screen) { drafts.sent.append("\($0)=\($1)") }, drafts)
    }

    private static let none = Opt(value: "none", label: "None", tone: .plain)
    private static let live = Opt(value: "live", label: "Live", tone: .forbid)

    /// A reading is what it looks like: a number or an answer, never both, and neither comes back after it was taken away.
    @Test func besideANumberNoAnswerLooksChosen() throws {
        let rows = [PadRow(field: "r", label: "N – L1", hint: "", chosen: "none")]
        let screen = screen(.pad(id: "p", pad: Pad(label: "Held on N", rows: rows, options: [PageTests.none, PageTests.live], volts: true, done: "")))
        let (form, drafts) = form(screen)
        guard case .card(let card) = Page(screen).parts[1].kind else { throw Failed("no card") }
        let tiles = try #require(card.lazy.compactMap { if case .tiles(let tiles) = $0.kind { tiles } else { nil } }.first)
        let volts = try #require(card.lazy.compactMap { if case .field(let field) = $0.kind { field } else { nil } }.first)
        func chosen() -> [Bool] { tiles.options.map { form.isChosen($0, of: tiles) } }
        #expect(chosen() == [true, false])
        form.type("231", in: volts)
        #expect(chosen() == [false, false] && form.filled == [Filled(field: "r", value: "231")] && !form.clashes("r"))
        form.tap(tiles.options[0], of: tiles)
        #expect(chosen() == [false, false] && form.filled.map(\.value) == ["231"] && form.clashes("r"))
        form.type("", in: volts)
        #expect(form.filled.map(\.value) == [""] && !form.clashes("r"))
        form.tap(tiles.options[1], of: tiles)
        #expect(chosen() == [false, true] && drafts.sent == ["r=231", "r=", "r=live"])
        form.type(String(repeating: "9", count: 20), in: volts)
        #expect(form.text("r").count == 12)
    }

    @Test func severalAnswersAreSentInTheirOrder() throws {
        let choice = Choice(field: "c", label: "Which", options: [PageTests.none, PageTests.live], chosen: [], many: true)
        let screen = screen(.choice(id: "c", choice: choice))
        let (form, drafts) = form(screen)
        guard case .tiles(let tiles) = Page(screen).parts[1].kind else { throw Failed("no tiles") }
        form.tap(tiles.options[1], of: tiles)
        form.tap(tiles.options[0], of: tiles)
        form.tap(tiles.options[1], of: tiles)
        #expect(drafts.sent == ["c=live", "c=none\nlive", "c=none"])
    }

    @Test func aSignatureIsDrawnOrTyped() throws {
        let screen = screen(.mark(id: "m", field: "mark", label: "Signature", value: ""))
        let (form, _) = form(screen)
        var value: String { form.filled[0].value }
        form.sign(" Ida Holm ", in: "mark")
        #expect(value == "typed:Ida Holm")
        form.draw(Sketch.Spot(0.1, 0.25), in: "mark", begins: true)
        form.draw(Sketch.Spot(0.101, 0.25), in: "mark", begins: false)
        form.draw(Sketch.Spot(0.2, 0.5), in: "mark", begins: false)
        form.lift("mark")
        form.draw(Sketch.Spot(1.5, -1), in: "mark", begins: true)
        form.lift("mark")
        // What was drawn counts; a hand that does not move draws nothing, and none draws beside the paper.
        #expect(value == "100,100 200,200;1000,0")
        #expect(Sketch(signature: value).strokes.map(\.figure) == [
            .path([.init(100, 100), .init(100, 100), .init(200, 200)], closed: false), .path([.init(1000, 0), .init(1000, 0)], closed: false),
        ])
        for _ in 0..<5000 {
            form.draw(Sketch.Spot(0, 0), in: "mark", begins: false)
            form.draw(Sketch.Spot(1, 1), in: "mark", begins: false)
        }
        form.lift("mark")
        #expect(value.split { " ;".contains($0) }.count == 4001)
        form.clear("mark")
        #expect(value == "typed:Ida Holm")
    }

    /// The same screen, with a field more than before.
    @Test func whatWasGivenStaysWhenAFieldComes() throws {
        let first = Block.entry(id: "a", entry: Entry(field: "a", label: "Name", hint: "", value: "", kind: .text, limit: 9))
        let (form, drafts) = form(screen(first))
        guard case .field(let field) = Page(screen(first)).parts[1].kind else { throw Failed("no field") }
        form.type("Ida", in: field)
        let choice = Choice(field: "c", label: "Which", options: [PageTests.none], chosen: ["none"], many: false)
        form.add(screen(first, .choice(id: "c", choice: choice)))
        #expect(form.filled == [Filled(field: "a", value: "Ida"), Filled(field: "c", value: "none")] && drafts.sent == ["a=Ida"])
    }

    /// The limits of the core are in Unicode scalars.
    @Test func aFieldTakesNoMoreThanItsLimit() throws {
        let entry = Entry(field: "e", label: "Name", hint: "", value: "", kind: .text, limit: 4)
        let screen = screen(.entry(id: "e", entry: entry))
        let (form, _) = form(screen)
        guard case .field(let field) = Page(screen).parts[1].kind else { throw Failed("no field") }
        form.type("e\u{301}e\u{301}e\u{301}", in: field)
        #expect(form.text("e").unicodeScalars.count == 4)
    }

    /// WCAG 2.2, 1.4.3 and 1.4.11, with its formula of relative luminance: words 4.5 to 1, edges and conductors 3 to 1.
    @Test(arguments: [\Shade.light, \Shade.dark]) func everythingCanBeReadOnItsPaper(_ side: KeyPath<Shade, UInt32> & Sendable) {
        func luminance(_ shade: Shade) -> Double {
            let parts = [16, 8, 0].map { Double(shade[keyPath: side] >> UInt32($0) & 255) / 255 }
            let linear = parts.map { $0 <= 0.04045 ? $0 / 12.92 : pow(($0 + 0.055) / 1.055, 2.4) }
            return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
        }
        func contrast(_ a: Shade, _ b: Shade) -> Double {
            let both = [luminance(a), luminance(b)].sorted()
            return (both[1] + 0.05) / (both[0] + 0.05)
        }
        // Black on white is 21 to 1.
        #expect(abs(contrast(Shade(0), Shade(0xFFFFFF)) - 21) < 0.001)
        for tone in [Tone.plain, .quiet, .warn, .forbid, .must] {
            for look in [Look.bar(tone), .framed(tone), .button(tone), .main(tone), .tile(tone), .plain] {
                #expect(contrast(look.fill, look.ink) >= 4.5, "\(tone)")
            }
        }
        for paper in [Shade.paper, .raised] {
            #expect(contrast(paper, .faint) >= 4.5)
            #expect(contrast(paper, .line) >= 3)
        }
        // A conductor is told from its paper, or from the rim around it.
        for ink in [Ink.brown, .black, .grey, .blue, .green] {
            #expect(max(contrast(.of(ink), .paper), contrast(.of(ink), .rim)) >= 3, "\(ink)")
        }
    }

    @Test func aConductorHasARimAndOtherInksHaveNone() {
        let drawing = Drawing(width: 200, height: 100, shapes: [
            .line(x1: 0, y1: 0, x2: 10, y2: 0, thick: 4, ink: .black), .circle(x: 5, y: 6, r: 7, thick: 1, filled: true, ink: .ink),
            .box(x: 1, y: 2, w: 3, h: 4, thick: 2, filled: false, ink: .warn), .text(x: 9, y: 9, size: 12, text: "L1", ink: .brown),
        ])
        let strokes = Sketch(drawing).strokes
        #expect(strokes.map(\.shade) == [.rim, .of(.black), .ink, .yellow, .rim, .rim, .rim, .rim, .of(.brown)])
        #expect(strokes.map(\.thick) == [6, 4, 0, 2, 0, 0, 0, 0, 0])
        #expect(strokes[8].figure == .text("L1", .init(9, 9), size: 12))
    }

    /// The words of an answer stay what VoiceOver says; one without a drawing has no room for one.
    @Test func anAnswerHasItsDrawing() throws {
        let drawing = Drawing(width: 160, height: 110, shapes: [.text(x: 9, y: 9, size: 12, text: "400 V", ink: .ink)])
        let drawn = Opt(value: "pen", label: "With PEN", tone: .plain, drawing: drawing)
        let choice = { (options: [Opt]) in Choice(field: "c", label: "Which", options: options, chosen: [], many: false) }
        guard case .tiles(let tiles) = Page(screen(.choice(id: "c", choice: choice([drawn, PageTests.none])))).parts[1].kind else { throw Failed("no tiles") }
        #expect(tiles.options.map(\.sketch) == [Sketch(drawing), nil] && tiles.options[0].said == "Which: With PEN" && tiles.pictured)
        guard case .tiles(let plain) = Page(screen(.choice(id: "c", choice: choice([PageTests.none])))).parts[1].kind else { throw Failed("no tiles") }
        #expect(!plain.pictured)
    }

    @Test func aWideDrawingIsMadeLargerInSteps() {
        #expect(!Sketch(Drawing(width: 400, height: 9, shapes: [])).isWide && Sketch(Drawing(width: 401, height: 9, shapes: [])).isWide)
        let steps = [true, true, true, false, false, false, false].reduce(into: [1.0]) { $0.append(Sketch.step($0.last!, larger: $1)) }
        #expect(steps.max() == 4 && steps.last == 1 && steps[1] == 1.6)
    }

    /// Shape, not colour, tells the signs apart; all stay within their square.
    @Test func signs() {
        var seen: [[Sketch.Figure]] = []
        for sign in Sign.allCases {
            let figures = sign.sketch(.ink).strokes.map(\.figure)
            #expect(!figures.isEmpty && !seen.contains(figures), "\(sign)")
            seen.append(figures)
            for case .path(let spots, _) in figures { #expect(spots.allSatisfy { (0...100).contains($0.x) && (0...100).contains($0.y) }) }
        }
    }
}
