import Foundation
import StillbarCore
import Testing
@testable import StillbarKit

/// What only the phone can do: the camera, ringing, sharing, the light.
@MainActor struct CameraTests {
    private static let tag = "STB7K2M9PX4W6BHE"

    /// Up to the first photo.
    private func isolated() async throws -> (Rig, Player) {
        let rig = try await Rig()
        try await rig.play("people", "plan", "add-instruments", "circuits")
        let script = try Repository.journey("isolate")
        try await Player(rig).play(String(try #require(script.cut(at: "\nphoto")).0))
        return (rig, Player(rig))
    }

    @Test func aTagIsScannedBoundAndAnswers() async throws {
        let (rig, player) = try await isolated()
        try await player.play("""
            tap Tag of Q4 feeder switch
            scan Scan the tag here = \(CameraTests.tag)
            see A blank tag
            tap It hangs at Q4 feeder switch
            see This is Q4 feeder switch, by its tag
            tap The job
            tap All jobs
            scan Scan a tag = \(CameraTests.tag)
            see Hangs at: Q4 feeder switch
            see Key holder: Mara Lind
            tap Ring Mara Lind
            """)
        #expect(rig.phone.rung == ["01632 960 101"])
        // A tag that is found is felt.
        #expect(rig.phone.buzzes == 2)
        try await player.play("tap All jobs\ntap Locks on now\ntap Share this as a message")
        #expect(rig.phone.shared.map(\.title) == ["Locks on now"])
        #expect(rig.phone.shared.first?.text.contains("lock ML 7") == true)
    }

    @Test func theRecordIsHandedOnAsAFile() async throws {
        let (rig, player) = try await isolated()
        try await player.play("tap The job\ntap Record of this job\ntap Share the record\nsee The record is made")
        let file = try #require(rig.phone.files.first?.file)
        #expect(file.lastPathComponent.hasSuffix(".pdf"))
        #expect(try Data(contentsOf: file).starts(with: Data("%PDF-".utf8)))
    }

    @Test func aScanGoesOnUntilThereIsATag() async throws {
        let (rig, player) = try await isolated()
        try await player.play("tap The job\ntap All jobs")
        await rig.shell.act(try player.action("Scan a tag"))
        let camera = rig.camera
        #expect(camera.frames == true)
        #expect(rig.shell.panel?.said == "Hold the tag in the middle of the picture.")
        await camera.see(.luma(width: 64, height: 48, bytes: Data(repeating: 90, count: 64 * 48)))
        #expect(rig.shell.panel != nil)
        await camera.see(try Codes.frame("https://example.org/"))
        #expect(rig.shell.panel?.said.contains("Nothing was opened") == true)
        rig.shell.light()
        #expect(camera.lit && rig.shell.panel?.lit == true)
        await camera.see(try Codes.frame(CameraTests.tag))
        #expect(camera.closed && rig.shell.panel == nil)
        #expect(rig.text.contains("knows nothing of this tag"))
        let shown = rig.text
        // One that was on its way when the scan ended does nothing.
        await camera.see(try Codes.frame("STB0000000000000"))
        #expect(rig.text == shown)
    }

    @Test func aPhotoIsKeptAndShown() async throws {
        let (rig, player) = try await isolated()
        try await player.play("photo Photo of Q4 feeder switch\ntap The job\ntap Isolate Q4 feeder switch")
        #expect(rig.text.contains("(1 kept)"))
        let photos = rig.page.parts.compactMap { if case .photos(let photos) = $0.kind { photos } else { nil } }.joined()
        let first = try #require(photos.first)
        let bytes = try #require(await rig.shell.picture(first.sha256))
        // ITU-T T.81 annex B: a JPEG begins with the marker SOI.
        #expect(photos.count == 1 && bytes.starts(with: [0xFF, 0xD8]))
        #expect(await rig.shell.picture("no such photo") == nil)
    }

    @Test func whatIsWrongWithTheCameraIsSaid() async throws {
        let (rig, player) = try await isolated()
        func take() async throws { await rig.shell.act(try player.action("Take the photo now")) }
        try await take()
        await rig.shell.refuse()
        #expect(rig.text.contains("! The camera was closed.") && rig.camera.closed)
        try await take()
        await rig.camera.fail(Words.cameraTaken)
        #expect(rig.text.contains("! Another app took the camera."))
        try await take()
        await rig.shell.back()
        #expect(rig.text.contains("! The camera was closed."))
        let buzzes = rig.phone.buzzes
        try await take()
        rig.shell.shoot()
        await rig.camera.see(.photo(Data(count: 10)))
        #expect(rig.text.contains("not a JPEG") && rig.camera.shots == 1)
        #expect(rig.phone.buzzes == buzzes + 1, "bad news is felt")
        #expect(rig.shell.panel == nil && rig.shell.pending == nil)
    }

    /// The panel goes with the app to the background, and comes back with it; the photo is still the one that was asked for.
    @Test func theCameraIsTakenUpAgain() async throws {
        let (rig, player) = try await isolated()
        await rig.shell.act(try player.action("Take the photo now"))
        let first = rig.camera
        await rig.shell.leave()
        #expect(first.closed && rig.shell.panel == nil)
        // A photo that comes only now is not kept under another moment.
        await first.see(.photo(Repository.photo))
        #expect(rig.shell.panel == nil)
        await rig.shell.come()
        #expect(rig.phone.cameras.count == 2 && rig.shell.panel?.scanning == false)
        rig.shell.shoot()
        await rig.camera.see(.photo(Repository.photo))
        #expect(rig.text.contains("The photo is saved"), "\(rig.text)")
    }

    @Test func withoutPermissionItSaysWhereToGiveIt() async throws {
        let (rig, player) = try await isolated()
        rig.phone.mayUse = false
        await rig.shell.act(try player.action("Take the photo now"))
        #expect(rig.phone.asked == 1 && rig.phone.cameras.isEmpty)
        #expect(rig.text.contains("Allow it in the phone's settings"))
        rig.phone.mayUse = true
        await rig.shell.act(try player.action("Take the photo now"))
        #expect(rig.phone.cameras.count == 1)
    }

    @Test func whoLeavesWhileBeingAskedIsNotFollowedByACamera() async throws {
        let (rig, player) = try await isolated()
        rig.phone.whileAsked = { [shell = rig.shell] in await shell.leave() }
        await rig.shell.act(try player.action("Take the photo now"))
        #expect(rig.phone.cameras.isEmpty)
        rig.phone.whileAsked = {}
        await rig.shell.come()
        #expect(rig.phone.cameras.count == 1)
    }

    @Test func rowsOfAPlaneArePutTogether() {
        let plane = Data((0..<UInt8(3 * 8 - 4)))
        plane.withUnsafeBytes { plane in
            #expect([UInt8](packed(width: 4, height: 3, stride: 8, plane: plane)) == [0, 1, 2, 3, 8, 9, 10, 11, 16, 17, 18, 19])
            #expect([UInt8](packed(width: 3, height: 2, stride: 3, plane: plane)) == [0, 1, 2, 3, 4, 5])
        }
    }
}
