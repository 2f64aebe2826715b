import StillbarCore

/// A colour on light and on dark paper, 0xRRGGBB.
public struct Shade: Equatable, Sendable {
    public let light: UInt32
    public let dark: UInt32

    init(_ light: UInt32, _ dark: UInt32? = nil) {
        self.light = light
        self.dark = dark ?? light
    }
}

/// Yellow, red and blue have their ISO 3864 meaning and no other.
extension Shade {
    public static let paper = Shade(0xFBF8F0, 0x14120D)
    public static let raised = Shade(0xEDE8DB, 0x24211A)
    public static let ink = Shade(0x16140F, 0xF7F2E6)
    public static let faint = Shade(0x46423A, 0xCDC6B6)
    public static let line = Shade(0x777061, 0x958D7C)
    /// Parts a dark conductor from dark paper, and a light one from light paper.
    static let rim = Shade(0xFBF8F0, 0xF7F2E6)
    static let yellow = Shade(0xF9A800)
    static let red = Shade(0x9B2423)
    static let blue = Shade(0x005387)
    static let black = Shade(0x14120D)
    static let white = Shade(0xFFFFFF)

    /// IEC 60445 conductor colours are the same on any paper.
    static func of(_ ink: Ink) -> Shade {
        switch ink {
        case .ink: .ink
        case .paper: .paper
        case .quiet: .faint
        case .warn: .yellow
        case .forbid: Shade(0xC23B36)
        case .must: Shade(0x2A7FB8)
        case .brown: Shade(0x7A4A24)
        case .black: Shade(0x101010)
        case .grey: Shade(0x8C9095)
        case .blue: Shade(0x2F74C9)
        case .green: Shade(0x2E7D3C)
        case .yellow: Shade(0xF2C500)
        case .dark: Shade(0x000000)
        case .light: .white
        }
    }
}

/// How a thing is filled, written on and framed. Shape and word carry the meaning; colour only repeats it.
public struct Look: Equatable, Sendable {
    public let fill: Shade
    public let ink: Shade
    public let rim: Shade
    /// Of the frame, in points; 0 is none.
    public let thick: Double

    /// Of the shell's own buttons.
    public static let shell = button(.plain)

    static let plain = Look(fill: .paper, ink: .ink, rim: .line, thick: 1)

    /// The fill and the ink of a tone that has a colour of its own.
    static func filled(_ tone: Tone) -> (fill: Shade, ink: Shade)? {
        switch tone {
        case .warn: (.yellow, .black)
        case .forbid: (.red, .white)
        case .must: (.blue, .white)
        case .plain, .quiet: nil
        }
    }

    static func bar(_ tone: Tone) -> Look {
        let (fill, ink) = filled(tone) ?? (.raised, .ink)
        return Look(fill: fill, ink: ink, rim: fill, thick: 0)
    }

    /// A warning is written on paper in a yellow frame: much text on yellow tires the eye.
    static func framed(_ tone: Tone) -> Look {
        if tone == .warn { return Look(fill: .raised, ink: .ink, rim: .yellow, thick: 3) }
        let (fill, ink) = filled(tone) ?? (.raised, .ink)
        return Look(fill: fill, ink: ink, rim: .line, thick: 3)
    }

    static func button(_ tone: Tone) -> Look {
        let (fill, ink) = filled(tone) ?? (.paper, .ink)
        return tone == .quiet ? Look(fill: fill, ink: ink, rim: .line, thick: 2) : Look(fill: fill, ink: ink, rim: .ink, thick: 3)
    }

    static func main(_ tone: Tone) -> Look {
        let (fill, ink) = filled(tone) ?? (tone == .quiet ? (.paper, .ink) : (.ink, .paper))
        return Look(fill: fill, ink: ink, rim: .ink, thick: 3)
    }

    static func row(opens: Bool, now: Bool) -> Look {
        if !opens { return Look(fill: .paper, ink: .ink, rim: .paper, thick: 0) }
        return now ? Look(fill: .raised, ink: .ink, rim: .ink, thick: 5) : Look(fill: .raised, ink: .ink, rim: .line, thick: 2)
    }

    /// Of an answer; the rim while it is chosen, which is thick then.
    static func tile(_ tone: Tone) -> Look { Look(fill: .raised, ink: .ink, rim: filled(tone)?.fill ?? .ink, thick: 5) }
}
