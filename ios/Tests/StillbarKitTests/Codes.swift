import Foundation
@testable import StillbarKit

/// Codes for the camera, drawn by libqrencode (`qrencode`), which is not the core's own writer.
enum Codes {
    /// A grainy frame of the camera with this code in it.
    static func frame(_ code: String, width: Int = 640, height: Int = 480) throws -> Picture {
        let rows = try modules(code)
        let side = 300 / rows.count
        let (left, top) = ((width - side * rows.count) / 2, (height - side * rows.count) / 2)
        var chance: UInt32 = 1
        let bytes = (0..<width * height).map { at -> UInt8 in
            let (x, y) = (at % width - left, at / width - top)
            let inside = x >= 0 && y >= 0 && x < side * rows.count && y < side * rows.count
            chance = chance &* 1_664_525 &+ 1_013_904_223
            return (inside && rows[y / side][x / side] ? 60 : 150) + UInt8(chance >> 24) % 24
        }
        return .luma(width: width, height: height, bytes: Data(bytes))
    }

    /// A picture file with this code in it.
    static func photo(_ code: String) throws -> Data { try run("-t", "PNG", "-s", "12", "-m", "4", "-l", "Q", "-o", "-", code) }

    private static func modules(_ code: String) throws -> [[Bool]] {
        let drawn = String(decoding: try run("-t", "ASCII", "-m", "0", "-l", "Q", "-o", "-", code), as: UTF8.self)
        // Each module is two characters wide.
        return drawn.split(separator: "\n").map { line in line.enumerated().filter { $0.offset % 2 == 0 }.map { $0.element == "#" } }
    }

    private static func run(_ words: String...) throws -> Data {
        let (process, out) = (Process(), Pipe())
        process.executableURL = URL(fileURLWithPath: "/usr/bin/env")
        process.arguments = ["qrencode"] + words
        process.standardOutput = out
        try process.run()
        let said = out.fileHandleForReading.readDataToEndOfFile()
        process.waitUntilExit()
        guard process.terminationStatus == 0, !said.isEmpty else { throw Failed("qrencode \(words.joined(separator: " ")) drew nothing") }
        return said
    }
}

struct Failed: Error, CustomStringConvertible {
    let description: String

    init(_ description: String) {
        self.description = description
    }
}
