import Foundation
import Observation
import StillbarCore

/// Shows the core's screen, sends back what the person did, and has errands run.
@MainActor @Observable public final class Shell {
    /// What is shown.
    public private(set) var page: Page?
    public private(set) var form: Form?
    /// Why there is no core, if there is none.
    public private(set) var trouble: String?
    /// The camera's panel over the screen.
    public internal(set) var panel: Panel?

    /// The screen as the core gave it.
    @ObservationIgnored public private(set) var screen: Screen?
    @ObservationIgnored let core: Core
    @ObservationIgnored let phone: any Phone
    /// The camera's errand that is under way.
    @ObservationIgnored var pending: Errand?
    /// Whether the person is being asked for the camera.
    @ObservationIgnored var asking = false
    /// Whether the app is in the background.
    @ObservationIgnored private(set) var away = true
    @ObservationIgnored private var acting = false
    /// How often something had changed by itself before what is shown.
    @ObservationIgnored private var stirred: UInt64 = 0

    /// The copies that are shown are so wide or high.
    nonisolated private static let small = ".320.jpg"

    public init(core: Core, phone: any Phone) {
        self.core = core
        self.phone = phone
    }

    /// The person tapped what has this action.
    public func act(_ action: String) async {
        // A second tap while the first is under way does nothing.
        guard let form, let turn = screen?.turn, !acting, !action.isEmpty else { return }
        acting = true
        let input = form.filled
        await call { $0.act(turn: turn, action: action, input: input) }
    }

    /// Back: away from the camera, or up.
    public func back() async {
        if pending != nil { return await refuse() }
        if let up = screen?.up { await act(up.action) }
    }

    /// A small copy of a kept photo.
    public func picture(_ sha256: String) async -> Data? {
        (try? await core.call { $0.photo(sha256: sha256 + Shell.small) }) ?? nil
    }

    /// The app is in front: opens the journal, and takes up what was under way.
    public func come() async {
        // It was only covered for a moment, as by a question of the system.
        guard away || page == nil || trouble != nil else { return }
        away = false
        do {
            try await core.resume()
            goodTime()
            await call { _ in [] }
        } catch {
            trouble = sentence(error)
        }
    }

    /// The app went to the background. When this returns, no file is held open: the system ends an app that sleeps with a lock.
    public func leave() async {
        away = true
        closePanel()
        await core.suspend()
    }

    /// Shows what changed without a tap, such as a lock that another phone told of. To be asked every second or two.
    public func watch() async {
        guard let form, !away, !acting, panel == nil, trouble == nil else { return }
        let (known, before) = (stirred, form.changes)
        let answer = try? await core.call { field in
            let now = field.stirred()
            return now == known ? nil : (field.screen(), now)
        }
        // Never over what is being typed or done meanwhile: then the next time.
        guard let (next, now) = answer ?? nil, !away, !acting, panel == nil, self.form === form, form.changes == before else { return }
        stirred = now
        show(next)
    }

    /// The system woke the app, or it is a quiet moment: lets the core do what can wait, until nothing is left or the task is cancelled.
    /// True if there is more to do.
    @discardableResult public func tend() async -> Bool {
        // What cannot be opened now is tried another time.
        guard (try? await core.resume()) != nil else { return true }
        goodTime()
        var more = true
        await withTaskCancellationHandler {
            while more && !Task.isCancelled { more = (try? await core.tend()) ?? false }
        } onCancel: {
            // The network may keep the core waiting for longer than the system does.
            Task { await self.sleepAgain() }
        }
        await sleepAgain()
        return more
    }

    private func sleepAgain() async {
        if away { await core.suspend() }
    }

    private func goodTime() {
        let free = phone.hasFreeLink
        core.tell { $0.goodTime(freeLink: free) }
    }

    /// Calls the core, shows its screen, and runs the errands that came back.
    func call(_ deed: @escaping @Sendable (Field) -> [Errand]) async {
        do {
            let (wanted, now, next) = try await core.call { field in (deed(field), field.stirred(), field.screen()) }
            acting = false
            stirred = now
            show(next)
            await run(wanted)
        } catch {
            acting = false
            trouble = sentence(error)
        }
    }

    func show(_ next: Screen) {
        // If nothing happened meanwhile, what was given stays, a signature too.
        let same = screen?.route == next.route && screen?.turn == next.turn
        trouble = nil
        screen = next
        page = Page(next)
        if same, let form { return form.add(next) }
        form = Form(next) { [core] field, value in core.tell { $0.edit(field: field, value: value) } }
    }
}

/// What to tell the person of an error: the core's own sentence, where it has one.
private func sentence(_ error: any Error) -> String {
    switch error {
    case OpenError.InUse(let what), OpenError.Damaged(let what), OpenError.Newer(let what), OpenError.ReadOnly(let what),
        OpenError.DiskFull(let what), OpenError.Secret(let what), OpenError.Other(let what):
        what
    default: error.localizedDescription
    }
}
