import StillbarCore

/// From the core's screen to a page, one function a kind of block.
extension Page {
    public init(_ screen: Screen) {
        turn = screen.turn
        // On the same route, too, another title or standing is a new thing to read from its top.
        place = [screen.route, screen.title, screen.standing?.word ?? ""].joined(separator: "\n")
        title = screen.title
        context = screen.context
        standing = screen.standing.map(Part.standing) ?? []
        notice = screen.notice.map { notice in
            let look = Look.framed(notice.tone)
            return Part("notice", .box(Box([.init(notice.text, .body)], said: notice.text, sign: Sign(notice.tone), look: look)))
        }
        parts = screen.blocks.flatMap(Part.of)
        main = screen.main.map { Part($0.id, .press(Press($0.label, $0.action, sign: nil, look: .main($0.tone)))) }
        up = screen.up.map { Part($0.id, .press(Press($0.label, $0.action, sign: .back, look: .button($0.tone)))) }
    }
}

extension Part {
    fileprivate static func standing(_ standing: Standing) -> [Part] {
        let said = "\(standing.word). \(standing.text)"
        let lines = [Box.Line(standing.word, .heading), Box.Line(standing.text, .body)]
        let bar = Part("standing", .box(Box(lines, said: said, sign: Sign(standing.tone), look: .bar(standing.tone))))
        return [bar] + standing.deviations.enumerated().map { at, text in
            Part("deviation:\(at)", .box(Box([.init(text, .body)], said: text, sign: .deviated, look: .bar(.plain))))
        }
    }

    fileprivate static func of(_ block: Block) -> [Part] {
        switch block {
        case .heading(let id, let text): [Part(id, .text(text, .heading))]
        case .paragraph(let id, let text): [Part(id, .text(text, .body))]
        case .caution(let id, let tone, let text): [caution(id, tone, text)]
        case .fact(let id, let label, let value):
            [Part(id, .box(Box([.init(label, .faint), .init(value, .strong)], said: "\(label): \(value)", look: .plain)))]
        case .step(let id, let step): [row(id, step)]
        case .choice(let id, let choice): chosen(id, choice)
        case .entry(let id, let entry): typed(id, entry)
        case .pad(let id, let pad):
            [Part("\(id):label", .text(pad.label, .heading))] + pad.rows.enumerated().map { Part("\(id):\($0)", .card(pair("\(id):\($0)", pad, $1))) }
        case .photo(let id, let slot): photos(id, slot)
        case .drawing(let id, let label, let drawing): [Part(id, .drawing(Sketch(drawing), said: label))]
        case .table(let id, let caption, let head, let rows): table(id, caption, head, rows)
        case .button(_, let button): [press(button)]
        case .mark(let id, let field, let label, _):
            [Part("\(id):label", .text(label, .strong)), Part(id, .signature(Signature(field: field, label: label)))]
        }
    }

    private static func caution(_ id: String, _ tone: Tone, _ text: String) -> Part {
        let word = Words.sign(tone)
        let lines = [Box.Line(word, .strong), Box.Line(text, .body)]
        return Part(id, .box(Box(lines, said: "\(word). \(text)", sign: Sign(tone), look: .framed(tone))))
    }

    private static func row(_ id: String, _ step: StepRow) -> Part {
        let title = [step.number, step.title].filter { !$0.isEmpty }.joined(separator: " ")
        let rest = ([step.word] + step.lines).filter { !$0.isEmpty }
        let lines = [Box.Line(title, .strong)] + rest.map { Box.Line($0, .faint) }
        let look = Look.row(opens: !step.action.isEmpty, now: step.state == .now)
        let said = ([title] + rest).joined(separator: ". ")
        let sign = step.word.isEmpty ? nil : Sign(step.state)
        return Part(id, .box(Box(lines, said: said, sign: sign, look: look, label: step.title, action: step.action)))
    }

    private static func chosen(_ id: String, _ choice: Choice) -> [Part] {
        let label = Part("\(id):label", .text(choice.label, .strong))
        return [label, Part(id, .tiles(Tiles(id, choice.field, asked: choice.label, choice.options, many: choice.many)))]
    }

    private static func typed(_ id: String, _ entry: Entry) -> [Part] {
        let keyboard: TypeIn.Keyboard =
            switch entry.kind {
            case .text: .text
            case .long: .long
            case .number: .number
            case .telephone: .telephone
            case .pin: .pin
            }
        let field = TypeIn(field: entry.field, label: entry.label, hint: entry.hint, keyboard: keyboard, limit: Int(entry.limit))
        return [Part("\(id):label", .text(entry.label, .strong))] + hint(id, entry.hint) + [Part(id, .field(field))]
    }

    private static func pair(_ id: String, _ pad: Pad, _ row: PadRow) -> [Part] {
        var parts = [Part("\(id):label", .text(row.label, .strong))] + hint(id, row.hint)
        if !pad.options.isEmpty {
            parts.append(Part("\(id):answers", .tiles(Tiles("\(id):answers", row.field, asked: row.label, pad.options, many: false))))
        }
        if pad.volts {
            let label = Words.volts(row.label)
            let field = TypeIn(field: row.field, label: label, hint: row.hint, keyboard: .number, limit: 12)
            parts.append(Part("\(id):volts:label", .text(label, .faint)))
            parts.append(Part("\(id):volts", .field(field)))
            parts.append(Part("\(id):clash", .clash(row.field)))
        }
        return parts
    }

    private static func photos(_ id: String, _ slot: PhotoSlot) -> [Part] {
        let shutter = Press(slot.label, slot.action, sign: .camera, look: .button(.plain), takesPhoto: true)
        let head = slot.action.isEmpty ? Part("\(id):label", .text(slot.label, .strong)) : Part("\(id):take", .press(shutter))
        let taken = slot.taken.enumerated().map { Photo(id: "\(id):\($0)", sha256: $1.sha256, said: $1.label) }
        return [head] + hint(id, slot.hint) + (taken.isEmpty ? [] : [Part(id, .photos(taken))])
    }

    /// A card a row: a phone has no room for columns of words.
    private static func table(_ id: String, _ caption: String, _ head: [String], _ rows: [Row]) -> [Part] {
        [Part(id, .text(caption, .heading))] + rows.enumerated().map { at, row in
            let said = row.cells.enumerated().map { column, cell in
                [column < head.count ? head[column] : "", cell].filter { !$0.isEmpty }.joined(separator: ": ")
            }
            let lines = said.enumerated().map { $0 == 0 ? Box.Line(row.cells[0], .strong) : Box.Line($1, .faint) }
            return Part("\(id):\(at)", .box(Box(lines, said: said.joined(separator: ". "), look: .plain)))
        }
    }

    private static func press(_ button: Button) -> Part {
        // A colour never stands alone: the sign says the same.
        let sign = Look.filled(button.tone) == nil ? nil : Sign(button.tone)
        return Part(button.id, .press(Press(button.label, button.action, sign: sign, look: .button(button.tone))))
    }

    private static func hint(_ id: String, _ text: String) -> [Part] {
        text.isEmpty ? [] : [Part("\(id):hint", .text(text, .faint))]
    }

    fileprivate init(_ id: String, _ kind: Kind) {
        self.init(id: id, kind: kind)
    }
}
