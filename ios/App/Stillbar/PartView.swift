import StillbarKit
import SwiftUI

/// The one renderer: a view for each kind of part.
struct PartView: View {
    let part: Part
    let form: StillbarKit.Form
    let shell: Shell

    var body: some View {
        switch part.kind {
        case .text(let text, let weight):
            Text(text).weighted(weight).foregroundStyle(Color(weight == .faint ? .faint : .ink))
                .accessibilityAddTraits(weight == .heading ? .isHeader : [])
                .accessibilityIdentifier(part.id)
        case .box(let box) where box.action.isEmpty:
            BoxView(box: box)
                .accessibilityElement(children: .ignore)
                .accessibilityLabel(box.said)
                .accessibilityIdentifier(part.id)
        case .box(let box):
            Button { Task { await shell.act(box.action) } } label: { BoxView(box: box) }
                .buttonStyle(.plain)
                .accessibilityLabel(box.said)
                .accessibilityIdentifier(part.id)
        case .press(let press):
            PressView(label: press.label, sign: press.sign, look: press.look) { await shell.act(press.action) }
                .accessibilityIdentifier(part.id)
        case .tiles(let tiles): TilesView(tiles: tiles, form: form)
        case .field(let field): FieldView(field: field, form: form).accessibilityIdentifier(part.id)
        case .clash(let field):
            if form.clashes(field) {
                Text(Words.clash).onAppear { AccessibilityNotification.Announcement(Words.clash).post() }
            }
        case .drawing(let sketch, let said):
            DrawingView(id: part.id, sketch: sketch, said: said)
        case .photos(let photos):
            LazyVGrid(columns: [GridItem(.adaptive(minimum: 140))], spacing: 8) {
                ForEach(photos) { PhotoView(photo: $0, shell: shell) }
            }
        case .signature(let place): SignatureView(id: part.id, place: place, form: form)
        case .card(let inside):
            VStack(alignment: .leading, spacing: 6) {
                ForEach(inside) { PartView(part: $0, form: form, shell: shell) }
            }
            .padding(12)
            .framed(fill: .paper, rim: .line, thick: 2)
        }
    }
}

private struct BoxView: View {
    let box: StillbarKit.Box

    var body: some View {
        HStack(spacing: 12) {
            if let sign = box.sign { SignView(sign: sign, ink: box.look.ink) }
            VStack(alignment: .leading, spacing: 2) {
                ForEach(Array(box.lines.enumerated()), id: \.offset) { _, line in
                    Text(line.text).weighted(line.weight).foregroundStyle(Color(line.weight == .faint ? .faint : box.look.ink))
                }
            }
            .frame(maxWidth: .infinity, alignment: .leading)
            if !box.action.isEmpty { SignView(sign: .onward, ink: box.look.ink, small: true) }
        }
        .padding(12)
        .frame(minHeight: box.action.isEmpty ? nil : target)
        .framed(fill: box.look.fill, rim: box.look.rim, thick: box.look.thick)
        .contentShape(Rectangle())
    }
}

/// A button of the page, the camera or the shell itself.
struct PressView: View {
    let label: String
    var sign: Sign?
    var look = Look.shell
    let pressed: () async -> Void

    var body: some View {
        Button { Task { await pressed() } } label: {
            HStack(spacing: 8) {
                if let sign { SignView(sign: sign, ink: look.ink, small: true) }
                Text(label).font(.body.bold()).foregroundStyle(Color(look.ink))
            }
            .padding(.horizontal, 16)
            .padding(.vertical, 8)
            .frame(maxWidth: .infinity, minHeight: target)
            .framed(fill: look.fill, rim: look.rim, thick: look.thick)
            .contentShape(Rectangle())
        }
        .buttonStyle(.plain)
        .accessibilityLabel(label)
    }
}

private struct TilesView: View {
    let tiles: Tiles
    let form: StillbarKit.Form
    @ScaledMetric private var least = 120.0
    @Environment(\.dynamicTypeSize) private var letters

    /// Two drawings side by side can be compared; beside large letters there is room for one.
    private var columns: [GridItem] {
        if !tiles.pictured { return [GridItem(.adaptive(minimum: least))] }
        return Array(repeating: GridItem(.flexible()), count: letters.isAccessibilitySize ? 1 : 2)
    }

    var body: some View {
        LazyVGrid(columns: columns, spacing: 8) {
            ForEach(tiles.options) { tile in
                let chosen = form.isChosen(tile, of: tiles)
                Button { form.tap(tile, of: tiles) } label: {
                    VStack(spacing: 8) {
                        if let sketch = tile.sketch {
                            SketchView(sketch: sketch).frame(maxWidth: 220).accessibilityHidden(true)
                        }
                        HStack {
                            Image(systemName: tiles.many ? (chosen ? "square.inset.filled" : "square") : (chosen ? "circle.inset.filled" : "circle"))
                            Text(tile.label).frame(maxWidth: .infinity, alignment: .leading)
                        }
                        .foregroundStyle(Color(tile.look.ink))
                    }
                    .padding(10)
                    .frame(maxWidth: .infinity, minHeight: target, maxHeight: tiles.pictured ? .infinity : nil, alignment: .top)
                    .framed(fill: tile.look.fill, rim: chosen ? tile.look.rim : .line, thick: chosen ? tile.look.thick : 2)
                    .contentShape(Rectangle())
                }
                .buttonStyle(.plain)
                .accessibilityLabel(tile.said)
                .accessibilityAddTraits(chosen ? .isSelected : [])
                .accessibilityIdentifier(tile.id)
            }
        }
    }
}

struct FieldView: View {
    let field: TypeIn
    let form: StillbarKit.Form

    var body: some View {
        input
            .keyboardType(keyboard)
            .padding(12)
            .frame(minHeight: target)
            .framed(fill: .raised, rim: .line, thick: 2)
            .accessibilityLabel(field.label)
            .accessibilityHint(field.hint)
    }

    /// Nobody beside reads a PIN along.
    @ViewBuilder private var input: some View {
        if field.keyboard == .pin {
            SecureField("", text: typed).textContentType(.oneTimeCode)
        } else {
            TextField("", text: typed, axis: field.keyboard == .long ? .vertical : .horizontal)
        }
    }

    private var typed: Binding<String> { Binding { form.text(field.field) } set: { form.type($0, in: field) } }

    private var keyboard: UIKeyboardType {
        switch field.keyboard {
        case .text, .long: .default
        case .number: .decimalPad
        case .telephone: .phonePad
        case .pin: .numberPad
        }
    }
}

private struct PhotoView: View {
    let photo: Photo
    let shell: Shell
    @State private var picture: UIImage?

    var body: some View {
        Color(.raised)
            .frame(height: 105)
            .overlay { if let picture { Image(uiImage: picture).resizable().scaledToFill() } }
            .clipped()
            .task(id: photo.sha256) { picture = await shell.picture(photo.sha256).flatMap(UIImage.init(data:)) }
            .accessibilityElement()
            .accessibilityLabel(photo.said)
            .accessibilityAddTraits(.isImage)
            .accessibilityIdentifier(photo.id)
    }
}
