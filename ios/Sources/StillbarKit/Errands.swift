import Foundation
import StillbarCore

/// The camera's panel.
public struct Panel {
    public let camera: any Camera
    /// Whether frames are looked at until there is a tag; otherwise a photo is taken.
    public let scanning: Bool
    /// What to point it at, or what is wrong with what it sees.
    public fileprivate(set) var said: String
    public fileprivate(set) var lit = false
}

/// Errands: what only the phone can do. The camera is a panel over the screen.
extension Shell {
    public func shoot() { panel?.camera.shoot() }

    public func light() {
        panel?.lit.toggle()
        if let panel { panel.camera.light(panel.lit) }
    }

    /// The person wants no picture.
    public func refuse() async { await end(.refused(why: Words.cameraClosed)) }

    func run(_ wanted: [Errand]) async {
        for errand in wanted {
            switch errand {
            case .ring(let number): phone.ring(number)
            case .share(let title, let text): phone.share(title: title, text: text)
            case .shareFile(let title, _, _, let path): phone.share(title: title, file: URL(fileURLWithPath: path))
            case .buzz: phone.buzz()
            case .takePhoto, .scanTag:
                if errand != pending { closePanel() }
                pending = errand
            }
        }
        await look()
    }

    /// The panel goes; the errand stays, and is taken up when the app is back.
    func closePanel() {
        panel?.camera.close()
        panel = nil
    }

    /// Takes up the camera's errand that waits, if any.
    private func look() async {
        guard pending != nil, panel == nil, !asking, !away else { return }
        asking = true
        let may = await phone.mayUseCamera()
        asking = false
        guard may else { return await end(.refused(why: Words.cameraForbidden)) }
        // While the person was asked, the app may have gone to the background.
        guard !away, let errand = pending else { return }
        let camera = phone.camera()
        switch errand {
        case .takePhoto(_, let hint): panel = Panel(camera: camera, scanning: false, said: hint)
        case .scanTag(_, let hint): panel = Panel(camera: camera, scanning: true, said: hint)
        default: return
        }
        camera.open(
            frames: panel?.scanning == true,
            seen: { [weak self] picture in await self?.saw(picture, for: errand) },
            trouble: { [weak self] why in await self?.end(.refused(why: why)) }
        )
    }

    private func saw(_ picture: Picture, for errand: Errand) async {
        // A frame that is late belongs to a scan that has ended.
        guard pending == errand else { return }
        switch picture {
        case .photo(let bytes): await end(.photo(mediaType: "image/jpeg", bytes: bytes))
        case .luma(let width, let height, let bytes):
            await frame(errand, .frame(width: UInt32(width), height: UInt32(height), luma: bytes))
        }
    }

    /// One frame: the answer says whether to go on.
    private func frame(_ errand: Errand, _ frame: Outcome) async {
        guard let token = errand.token else { return }
        let answer = try? await core.call { field in (field.deliver(token: token, outcome: frame), field.screen()) }
        guard let (wanted, next) = answer, pending == errand else { return }
        if wanted.contains(errand) {
            // What it said of this frame stands below the panel, too.
            if next.turn != screen?.turn { show(next) }
            if let notice = next.notice { panel?.said = notice.text }
        } else {
            pending = nil
            closePanel()
            await call { _ in wanted }
        }
    }

    private func end(_ outcome: Outcome) async {
        guard let token = pending?.token else { return }
        pending = nil
        closePanel()
        await call { $0.deliver(token: token, outcome: outcome) }
    }
}

extension Errand {
    fileprivate var token: String? {
        switch self {
        case .takePhoto(let token, _), .scanTag(let token, _): token
        case .ring, .share, .shareFile, .buzz: nil
        }
    }
}
