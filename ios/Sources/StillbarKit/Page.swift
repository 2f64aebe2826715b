import StillbarCore

/// A screen flattened into what is drawn, from top to bottom. A view draws these few kinds and understands nothing of them.
public struct Page: Equatable, Sendable {
    /// Changes with everything that happened.
    public let turn: UInt64
    /// Changes when there is something new to read from its top.
    public let place: String
    public let title: String
    public let context: String
    /// What stands proved, and the deviations below it.
    public let standing: [Part]
    /// Said at once by VoiceOver, at every turn.
    public let notice: Part?
    public let parts: [Part]
    public let main: Part?
    public let up: Part?

    /// Everything with its insides, in reading order.
    public var all: [Part] { (standing + [up].compactMap { $0 } + parts + [notice, main].compactMap { $0 }).flatMap(\.withInsides) }
}

/// One thing to draw. The id is unique on its page, and the same for the same thing on the next.
public struct Part: Identifiable, Equatable, Sendable {
    public let id: String
    public let kind: Kind

    public enum Kind: Equatable, Sendable {
        case text(String, Weight)
        case box(Box)
        case press(Press)
        case tiles(Tiles)
        case field(TypeIn)
        /// A sentence that shows while an answer is tapped beside a number; of which field.
        case clash(String)
        case drawing(Sketch, said: String)
        case photos([Photo])
        case signature(Signature)
        case card([Part])
    }

    var withInsides: [Part] {
        if case .card(let inside) = kind { [self] + inside.flatMap(\.withInsides) } else { [self] }
    }
}

public enum Weight: Equatable, Sendable { case heading, strong, body, faint }

/// Lines in a frame, read out as one; something to tap if it has an action.
public struct Box: Equatable, Sendable {
    public struct Line: Equatable, Sendable {
        public let text: String
        public let weight: Weight

        init(_ text: String, _ weight: Weight) {
            self.text = text
            self.weight = weight
        }
    }
    public let lines: [Line]
    /// What VoiceOver says for all of it.
    public let said: String
    public let sign: Sign?
    public let look: Look
    /// What it is called without its number, if it can be tapped.
    public let label: String
    /// Sent back as it stands, or empty.
    public let action: String

    init(_ lines: [Line], said: String, sign: Sign? = nil, look: Look, label: String = "", action: String = "") {
        self.lines = lines
        self.said = said
        self.sign = sign
        self.look = look
        self.label = label
        self.action = action
    }
}

/// A button.
public struct Press: Equatable, Sendable {
    public let label: String
    public let action: String
    public let sign: Sign?
    public let look: Look
    /// The one of a place for photos; journeys tell it from the others.
    public let takesPhoto: Bool

    init(_ label: String, _ action: String, sign: Sign?, look: Look, takesPhoto: Bool = false) {
        self.label = label
        self.action = action
        self.sign = sign
        self.look = look
        self.takesPhoto = takesPhoto
    }
}

/// Answers to pick from; what is chosen is in the form.
public struct Tiles: Equatable, Sendable {
    public struct Tile: Identifiable, Equatable, Sendable {
        public let id: String
        public let value: String
        public let label: String
        /// What VoiceOver says: the question as well.
        public let said: String
        public let look: Look
        /// What the answer is about, above its words, which say the same.
        public let sketch: Sketch?
    }
    public let field: String
    public let asked: String
    public let options: [Tile]
    public let many: Bool
    /// Whether answers have drawings: then at most two stand side by side.
    public var pictured: Bool { options.contains { $0.sketch != nil } }

    init(_ id: String, _ field: String, asked: String, _ options: [Opt], many: Bool) {
        self.field = field
        self.asked = asked
        self.options = options.enumerated().map { at, option in
            Tile(
                id: "\(id):\(at)", value: option.value, label: option.label, said: "\(asked): \(option.label)", look: .tile(option.tone),
                sketch: option.drawing.map { Sketch($0) })
        }
        self.many = many
    }
}

/// A field to type in; what is in it is in the form.
public struct TypeIn: Equatable, Sendable {
    public enum Keyboard: Equatable, Sendable { case text, long, number, telephone, pin }
    public let field: String
    /// What VoiceOver says; what is written above it is a part of its own.
    public let label: String
    public let hint: String
    public let keyboard: Keyboard
    /// Most characters (Unicode scalars, as the core counts).
    public let limit: Int
}

/// A photo that is kept; its bytes come from `Shell.picture`.
public struct Photo: Identifiable, Equatable, Sendable {
    public let id: String
    public let sha256: String
    public let said: String
}

/// A place to sign: strokes, or a typed name.
public struct Signature: Equatable, Sendable {
    public let field: String
    public let label: String
}
