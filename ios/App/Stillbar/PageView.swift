import StillbarKit
import SwiftUI

/// A page: what stands proved at the top, the body, what just happened and the one main action at the bottom.
struct PageView: View {
    let page: Page
    let form: StillbarKit.Form
    let shell: Shell
    @Environment(\.dynamicTypeSize) private var letters
    @Environment(\.verticalSizeClass) private var height

    /// On a short screen or with large letters nothing sticks to the edges: the rest needs the room.
    private var pinned: Bool { !letters.isAccessibilitySize && height != .compact }

    var body: some View {
        VStack(spacing: 0) {
            if pinned { parts(page.standing.prefix(1)) }
            ScrollView {
                VStack(alignment: .leading, spacing: 16) {
                    parts(pinned ? page.standing.dropFirst() : page.standing[...])
                    if let up = page.up { part(up) }
                    if !page.context.isEmpty { Text(page.context).font(.callout).foregroundStyle(Color(.faint)) }
                    Text(page.title).font(.title.bold()).accessibilityAddTraits(.isHeader)
                    parts(page.parts[...])
                    if !pinned { foot }
                }
                .padding()
            }
            // Something new is read from its top.
            .id(page.place)
            .scrollDismissesKeyboard(.interactively)
            if pinned { foot }
        }
        .accessibilityAction(.escape) { Task { await shell.back() } }
        .onChange(of: page.turn) { say() }
        .onChange(of: page.place) { AccessibilityNotification.ScreenChanged().post() }
    }

    private var foot: some View {
        VStack(spacing: 12) {
            if let notice = page.notice { part(notice) }
            if let main = page.main { part(main) }
        }
        .padding(pinned && (page.notice != nil || page.main != nil) ? 12 : 0)
    }

    private func parts(_ parts: ArraySlice<Part>) -> some View { ForEach(parts) { part($0) } }

    private func part(_ part: Part) -> some View { PartView(part: part, form: form, shell: shell) }

    private func say() {
        // The camera's panel says it itself.
        if shell.panel == nil, case .box(let box)? = page.notice?.kind { AccessibilityNotification.Announcement(box.said).post() }
    }
}
