import BackgroundTasks
import StillbarKit
import SwiftUI

@main struct StillbarApp: App {
    @State private var shell = Shell(core: Core(in: .applicationSupportDirectory, PhoneKeychain()), phone: ThisPhone())
    @Environment(\.scenePhase) private var phase

    /// Info.plist permits it by this name.
    private static let tending = "app.stillbar.tending"

    var body: some Scene {
        WindowGroup {
            ShellView(shell: shell)
        }
        .onChange(of: phase, initial: true) {
            switch phase {
            case .active: Task { await shell.come() }
            case .background: leave()
            default: break
            }
        }
        .backgroundTask(.appRefresh(StillbarApp.tending)) {
            await ask()
            await shell.tend()
        }
    }

    private func leave() {
        // Without this the app may sleep before the journal is closed.
        let time = UIApplication.shared.beginBackgroundTask()
        Task {
            await shell.leave()
            ask()
            UIApplication.shared.endBackgroundTask(time)
        }
    }

    /// For the next time; when that is, is for the system to say. If it takes no request now, the next time in the background makes one.
    private func ask() {
        try? BGTaskScheduler.shared.submit(BGAppRefreshTaskRequest(identifier: StillbarApp.tending))
    }
}
