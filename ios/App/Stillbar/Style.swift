import StillbarKit
import SwiftUI

/// For gloves: nothing that can be tapped is lower.
let target: CGFloat = 56

extension Color {
    /// On light or dark paper, as the phone is set.
    init(_ shade: Shade) {
        self.init(uiColor: UIColor { traits in
            let rgb = traits.userInterfaceStyle == .dark ? shade.dark : shade.light
            func part(_ shift: UInt32) -> CGFloat { CGFloat(rgb >> shift & 255) / 255 }
            return UIColor(red: part(16), green: part(8), blue: part(0), alpha: 1)
        })
    }
}

extension Text {
    /// By text styles, so that all letters follow the size that the person chose.
    func weighted(_ weight: Weight) -> Text {
        switch weight {
        case .heading: font(.title3.bold())
        case .strong: font(.body.bold())
        case .body: font(.body)
        case .faint: font(.callout)
        }
    }
}

extension View {
    func framed(fill: Shade, rim: Shade, thick: Double) -> some View {
        background(Color(fill), in: RoundedRectangle(cornerRadius: 8))
            .overlay { RoundedRectangle(cornerRadius: 8).strokeBorder(Color(rim), lineWidth: thick) }
    }
}
