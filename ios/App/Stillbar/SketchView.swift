import StillbarKit
import SwiftUI

/// The one canvas: paints drawings, signs and signatures as wide as there is room.
struct SketchView: View {
    let sketch: Sketch

    var body: some View {
        Canvas { canvas, size in
            let scale = min(size.width / sketch.width, size.height / sketch.height)
            canvas.translateBy(x: (size.width - sketch.width * scale) / 2, y: 0)
            canvas.scaleBy(x: scale, y: scale)
            for stroke in sketch.strokes { paint(stroke, on: canvas) }
        }
        .aspectRatio(sketch.width / sketch.height, contentMode: .fit)
    }

    private func paint(_ stroke: Sketch.Stroke, on canvas: GraphicsContext) {
        var path = SwiftUI.Path()
        switch stroke.figure {
        case .path(let spots, let closed):
            path.addLines(spots.map { CGPoint(x: $0.x, y: $0.y) })
            if closed { path.closeSubpath() }
        case .circle(let middle, let r):
            path.addEllipse(in: CGRect(x: middle.x - r, y: middle.y - r, width: 2 * r, height: 2 * r))
        case .box(let from, let w, let h, let corner):
            path.addRoundedRect(in: CGRect(x: from.x, y: from.y, width: w, height: h), cornerSize: CGSize(width: corner, height: corner))
        case .text(let text, let at, let size):
            let words = canvas.resolve(Text(text).font(.system(size: size, weight: .bold)).foregroundStyle(Color(stroke.shade)))
            let room = CGSize(width: CGFloat.infinity, height: .infinity)
            canvas.draw(words, at: CGPoint(x: at.x, y: at.y - words.firstBaseline(in: room)), anchor: .top)
            return
        }
        let shade = GraphicsContext.Shading.color(Color(stroke.shade))
        if stroke.thick == 0 {
            canvas.fill(path, with: shade)
        } else {
            let dash: [CGFloat] = stroke.dashed ? [10, 17] : []
            canvas.stroke(path, with: shade, style: StrokeStyle(lineWidth: stroke.thick, lineCap: .round, lineJoin: .round, dash: dash))
        }
    }
}

/// A drawing with what VoiceOver says of it. A wide one is made larger in steps, and moved by a finger.
struct DrawingView: View {
    let id: String
    let sketch: Sketch
    let said: String
    @State private var zoom = 1.0

    var body: some View {
        VStack(spacing: 8) {
            ScrollView(.horizontal) {
                SketchView(sketch: sketch).containerRelativeFrame(.horizontal) { room, _ in room * zoom }
            }
            .accessibilityElement()
            .accessibilityLabel(said)
            .accessibilityAddTraits(.isImage)
            .accessibilityIdentifier(id)
            if sketch.isWide {
                PressView(label: Words.larger) { zoom = Sketch.step(zoom, larger: true) }
                PressView(label: Words.smaller) { zoom = Sketch.step(zoom, larger: false) }
            }
        }
    }
}

/// A sign grows with the letters beside it, which say the same.
struct SignView: View {
    let sign: Sign
    let ink: Shade
    var small = false
    @ScaledMetric private var side = 36.0

    var body: some View {
        SketchView(sketch: sign.sketch(ink))
            .frame(width: small ? side * 0.7 : side, height: small ? side * 0.7 : side)
            .flipsForRightToLeftLayoutDirection(sign.points)
            .accessibilityHidden(true)
    }
}

/// A place to sign with a finger, or to type one's name.
struct SignatureView: View {
    let id: String
    let place: Signature
    let form: StillbarKit.Form
    @State private var drawing = false

    var body: some View {
        VStack(alignment: .leading, spacing: 8) {
            GeometryReader { room in
                SketchView(sketch: Sketch(signature: form.strokes(place.field)))
                    .contentShape(Rectangle())
                    .gesture(pen(room.size))
            }
            .aspectRatio(2.5, contentMode: .fit)
            .framed(fill: .raised, rim: .line, thick: 2)
            .accessibilityElement()
            .accessibilityLabel(place.label)
            .accessibilityHint(Words.orType)
            .accessibilityIdentifier(id)
            PressView(label: Words.clear) { form.clear(place.field) }
            Text(Words.orType)
            TextField("", text: Binding { form.text(place.field) } set: { form.sign($0, in: place.field) })
                .textContentType(.name)
                .padding(12)
                .frame(minHeight: target)
                .framed(fill: .raised, rim: .line, thick: 2)
                .accessibilityLabel("\(place.label), \(Words.orType)")
                .accessibilityIdentifier("\(id):typed")
        }
    }

    private func pen(_ size: CGSize) -> some Gesture {
        DragGesture(minimumDistance: 0)
            .onChanged { at in
                form.draw(Sketch.Spot(at.location.x / size.width, at.location.y / size.height), in: place.field, begins: !drawing)
                drawing = true
            }
            .onEnded { _ in
                drawing = false
                form.lift(place.field)
            }
    }
}
