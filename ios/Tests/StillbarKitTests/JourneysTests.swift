import StillbarCore
import Testing
@testable import StillbarKit

/// Whole jobs through the page and the form, with every screen looked over on the way.
@MainActor struct JourneysTests {
    nonisolated static let stories: [(name: String, journeys: [String])] = {
        let lines = (try? Repository.text("core/journeys/stories.txt"))?.split(separator: "\n") ?? []
        return lines.filter { !$0.hasPrefix("#") }.compactMap { $0.cut(at: ": ") }.map { ($0, $1.split(separator: " ").map(String.init)) }
    }()

    @Test func thereAreStories() { #expect(JourneysTests.stories.count >= 10) }

    /// The same text, byte for byte, as the core alone shows (`core/examples/transcript.rs`).
    @Test(arguments: stories.map(\.name)) func everyScreenIsTheSame(_ name: String) async throws {
        let rig = try await Rig()
        var shown = ""
        var player = Player(rig)
        player.between = { line in
            shown += "== \(line)\n\(rig.text)\n"
            #expect(Shown.faults(rig) == [], "after \(line)")
        }
        let story = try #require(JourneysTests.stories.first { $0.name == name })
        for journey in story.journeys { try await player.play(Repository.journey(journey)) }
        let told = try Repository.transcript(name)
        #expect(!told.isEmpty)
        if shown != told { Issue.record("\(firstDifference(shown, told))") }
        // Every callback reached the phone that this test lent.
        let all: Set = ["nowMs", "offsetMinutes", "running", "random", "loadSecret", "storeSecret", "loadHead", "storeHead"]
        #expect(Set(rig.device.calls.keys) == all)
        #expect(rig.device.calls["storeSecret"] == 1 && rig.keychain.secrets.count == 1)
        #expect(!rig.phone.cameras.contains { !$0.closed })
    }

    /// A whole job in the phone's language, as `core/tests/it/languages.rs` has written it down.
    @Test(arguments: ["de", "es", "en-XA", "ar-XB"]) func aWholeJobInAnotherLanguage(_ language: String) async throws {
        let rig = try await Rig(languages: [language])
        var player = Player(rig)
        player.between = { line in #expect(Shown.faults(rig) == [], "after \(line)") }
        try await player.play(Repository.journey("in/\(language)"))
        #expect(rig.shell.screen?.language == language)
        #expect(rig.shell.screen?.mirrored == (language == "ar-XB"))
    }

    private func firstDifference(_ shown: String, _ told: String) -> String {
        let (a, b) = (shown.split(separator: "\n", omittingEmptySubsequences: false), told.split(separator: "\n", omittingEmptySubsequences: false))
        let at = zip(a, b).enumerated().first { $0.element.0 != $0.element.1 }?.offset ?? min(a.count, b.count)
        let before = a[..<at].last { $0.hasPrefix("== ") } ?? ""
        return "line \(at + 1), after \(before)\nhere: \(at < a.count ? a[at] : "the end")\ncore: \(at < b.count ? b[at] : "the end")"
    }
}
