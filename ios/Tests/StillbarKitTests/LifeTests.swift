import Foundation
import StillbarCore
import Testing
@testable import StillbarKit

/// The app is killed, sent to the background and brought back, and nothing is lost.
@MainActor struct LifeTests {
    private func planned() async throws -> Rig {
        let rig = try await Rig()
        try await rig.play("people", "plan", "add-instruments", "circuits")
        return rig
    }

    private func field(_ label: String, _ rig: Rig) throws -> TypeIn {
        try #require(rig.page.parts.lazy.compactMap { if case .field(let field) = $0.kind, field.label == label { field } else { nil } }.first)
    }

    @Test func aKilledAppGoesOnWhereItWas() async throws {
        let rig = try await planned()
        rig.form.type("Half a sente", in: try field("What was seen", rig))
        // What is typed shows in the field; the screen has it when it is drawn anew.
        let before = rig.text.replacingOccurrences(of: "What was seen: ", with: "What was seen: Half a sente")
        await rig.kill()
        func still(_ text: String) -> [Substring] { text.split(separator: "\n").filter { !$0.hasPrefix("!") } }
        #expect(still(rig.text) == still(before))
        #expect(rig.form.text(try field("What was seen", rig).field) == "Half a sente")
        try await rig.play("isolate")
        await rig.kill()
        try await rig.play("prove")
        #expect(rig.text.contains("[Proved dead]"))
    }

    /// A whole job, killed and started again before every line that acts.
    @Test func killedAtEveryStep() async throws {
        let rig = try await Rig()
        for name in ["people", "plan", "add-instruments", "circuits", "isolate", "prove", "work", "restore"] {
            for line in Player.lines(try Repository.journey(name)) {
                // A signature is given for one act by one person, and is the one thing that is given again.
                if !line.hasPrefix("sign"), !rig.form.filled.contains(where: { $0.value.hasPrefix("typed:") }) { await rig.kill() }
                try await Player(rig).play(line)
            }
        }
        #expect(rig.text.contains("[Handed back]"))
    }

    /// The same with the app sent to the background.
    @Test func awayAtEveryStep() async throws {
        let rig = try await Rig()
        for name in ["people", "plan", "add-instruments", "circuits", "isolate", "indication"] {
            for line in Player.lines(try Repository.journey(name)) {
                let before = rig.text
                await rig.shell.leave()
                await rig.shell.come()
                if rig.form.filled.isEmpty { #expect(rig.text == before) }
                try await Player(rig).play(line)
            }
        }
        #expect(rig.text.contains("[Stop, treat as live]"))
    }

    #if os(Linux)
        /// proc(5): what this process has open. The system ends an app that sleeps with a lock.
        @Test func inTheBackgroundNoFileIsHeld() async throws {
            let rig = try await planned()
            func held() throws -> [String] {
                try FileManager.default.contentsOfDirectory(atPath: "/proc/self/fd")
                    .compactMap { try? FileManager.default.destinationOfSymbolicLink(atPath: "/proc/self/fd/\($0)") }
                    .filter { $0.hasPrefix(rig.support.path) }
            }
            #expect(try held().contains { $0.hasSuffix("journal.db") })
            await rig.shell.leave()
            #expect(try held() == [])
            await rig.shell.come()
            #expect(try held().contains { $0.hasSuffix("journal.db") })
        }
    #endif

    @Test func aTapThatComesTooLateIsToldAndLosesNothing() async throws {
        let rig = try await planned()
        rig.form.type("Washers stopped", in: try field("What was seen", rig))
        let action = try Player(rig).action("F1 washers is off and was seen to go off")
        await rig.shell.leave()
        await rig.shell.act(action)
        #expect(rig.text.contains("! Stillbar was in the background"))
        await rig.shell.come()
        #expect(rig.text.contains("! Stillbar was in the background") && rig.text.contains("What was seen: Washers stopped"))
        await rig.shell.act(action)
        #expect(rig.text.contains("F2 lighting is off and was seen"))
    }

    @Test func aSecondTapDoesNothing() async throws {
        let rig = try await planned()
        rig.form.type("Washers stopped", in: try field("What was seen", rig))
        let action = try Player(rig).action("F1 washers is off and was seen to go off")
        async let first: Void = rig.shell.act(action)
        async let second: Void = rig.shell.act(action)
        _ = await (first, second)
        #expect(rig.text.contains("F2 lighting is off and was seen"))
        #expect(!rig.text.contains("changed before that tap"))
    }

    @Test func backGoesUp() async throws {
        let rig = try await planned()
        await rig.shell.back()
        await rig.shell.back()
        #expect(rig.shell.screen?.title == "Jobs")
        await rig.shell.back()
        #expect(rig.shell.screen?.title == "Jobs")
    }

    @Test func aJournalThatCannotBeOpenedSaysWhyAndNothingIsLost() async throws {
        let rig = try await planned()
        let secrets = rig.keychain.secrets
        rig.keychain.secrets = [:]
        await rig.kill()
        #expect(rig.shell.trouble?.contains("device key") == true, "\(rig.shell.trouble ?? "nothing")")
        #expect(rig.shell.page == nil)
        rig.keychain.secrets = secrets
        await rig.shell.come()
        #expect(rig.shell.trouble == nil && rig.text.contains("Switch off the loads"))
    }

    /// On the way back, too: locked since it was started, the phone keeps its key to itself.
    @Test func aReturnThatFailsIsTriedAgain() async throws {
        let rig = try await planned()
        let before = rig.text
        await rig.shell.leave()
        rig.keychain.refuses = Status.locked
        await rig.shell.come()
        #expect(rig.shell.trouble?.contains("unlock it and try again") == true)
        rig.keychain.refuses = nil
        await rig.shell.come()
        #expect(rig.shell.trouble == nil && rig.text == before)
    }

    @Test func inAQuietMomentTheCoreIsTold() async throws {
        let rig = try await planned()
        try await rig.play("isolate")
        await rig.shell.leave()
        let photos = rig.journal.appendingPathComponent("photos")
        let name = try #require(try FileManager.default.contentsOfDirectory(atPath: photos.path).first { $0.hasSuffix(".320.jpg") })
        let copy = photos.appendingPathComponent(name).path
        try FileManager.default.removeItem(atPath: copy)
        #expect(await rig.shell.tend() == false)
        #expect(FileManager.default.fileExists(atPath: copy))
        // It was in the background before, and is there again: another may open the folder.
        _ = try Field.open(folder: rig.journal.path, platform: rig.device)
        rig.keychain.refuses = Status.locked
        #expect(await rig.shell.tend())
    }

    /// A core in which something changes by itself, as the exchange with an office does it.
    private final class Stirring: Field, @unchecked Sendable {
        nonisolated(unsafe) static var count: UInt64 = 0
        /// What the person does while the core is asked.
        nonisolated(unsafe) static var meanwhile: @Sendable @MainActor () -> Void = {}

        /// Whether the link was free at each good time that the core was told of.
        nonisolated(unsafe) static var links: [Bool] = []

        override func goodTime(freeLink: Bool) { Stirring.links.append(freeLink) }

        override func stirred() -> UInt64 {
            DispatchQueue.main.sync { MainActor.assumeIsolated { Stirring.meanwhile() } }
            return Stirring.count
        }
    }

    @Test func whatChangedByItselfIsShownButNeverOverAHandThatTypes() async throws {
        let rig = try await planned()
        let journal = rig.journal
        await rig.shell.leave()
        let device = rig.device
        let core = Core { Stirring(unsafeFromHandle: try Field.open(folder: journal.path, platform: device).uniffiCloneHandle()) }
        let shell = Shell(core: core, phone: rig.phone)
        rig.phone.hasFreeLink = true
        await shell.come()
        await shell.watch()
        #expect(Stirring.links == [true])
        // Something happens that no tap here has done.
        let elsewhere = { @Sendable (field: Field) -> Void in _ = field.act(turn: nil, action: "go /", input: []) }
        await shell.watch()
        let before = shell.screen
        try await shell.core.call(elsewhere)
        await shell.watch()
        #expect(shell.screen == before)
        Stirring.count += 1
        let form = try #require(shell.form)
        let typed = try field("What was seen", rig)
        Stirring.meanwhile = { form.type("Half a sente", in: typed) }
        await shell.watch()
        #expect(shell.screen == before && shell.form === form)
        Stirring.meanwhile = {}
        await shell.watch()
        #expect(shell.screen?.title == "Jobs")
    }

    /// The system may wake the app for this alone.
    @Test func aQuietMomentBeforeTheFirstLook() async throws {
        let rig = try await planned()
        await rig.shell.leave()
        let core = Core { [journal = rig.journal, device = rig.device] in try Field.open(folder: journal.path, platform: device) }
        let woken = Shell(core: core, phone: TestPhone())
        #expect(await woken.tend() == false)
        await woken.come()
        #expect(woken.screen.map(asText) == rig.text)
    }
}
