import StillbarKit
import SwiftUI

/// The page, the camera over it, or why there is neither.
struct ShellView: View {
    let shell: Shell

    var body: some View {
        Group {
            if let why = shell.trouble {
                trouble(why)
            } else if let page = shell.page, let form = shell.form {
                PageView(page: page, form: form, shell: shell)
            } else {
                Color.clear
            }
        }
        .frame(maxWidth: .infinity, maxHeight: .infinity)
        .background(Color(.paper).ignoresSafeArea())
        .foregroundStyle(Color(.ink))
        .task {
            while !Task.isCancelled {
                await shell.watch()
                try? await Task.sleep(for: .seconds(2))
            }
        }
        .fullScreenCover(isPresented: .constant(shell.panel != nil)) {
            if let panel = shell.panel { CameraView(panel: panel, shell: shell).id(ObjectIdentifier(panel.camera)) }
        }
    }

    private func trouble(_ why: String) -> some View {
        ScrollView {
            VStack(alignment: .leading, spacing: 16) {
                Text(Words.cannotStart).font(.title.bold()).accessibilityAddTraits(.isHeader)
                Text(why).accessibilityIdentifier("trouble")
                PressView(label: Words.tryAgain) { await shell.come() }
            }
            .padding()
        }
    }
}
