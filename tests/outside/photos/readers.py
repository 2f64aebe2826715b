"""The outside readers, each as a function from a grey picture to the texts that it finds."""

import cv2
import numpy as np
import zxingcpp
from pyzbar import pyzbar


def by_zxing(grey: np.ndarray) -> set[str]:
    """zxing-cpp with all that it can try switched on."""
    found = zxingcpp.read_barcodes(
        grey, formats=zxingcpp.BarcodeFormat.QRCode, try_rotate=True, try_downscale=True, try_invert=True
    )
    return {code.text for code in found}


def by_zbar(grey: np.ndarray) -> set[str]:
    """ZBar through pyzbar, QR codes only."""
    found = pyzbar.decode(grey, symbols=[pyzbar.ZBarSymbol.QRCODE])
    return {code.data.decode("utf-8", "replace") for code in found}


def by_opencv(grey: np.ndarray) -> set[str]:
    """OpenCV's detector."""
    try:
        _, texts, _, _ = cv2.QRCodeDetector().detectAndDecodeMulti(grey)
    except cv2.error:
        # It throws on some pictures; for the person that is a tag not found.
        return set()
    return {text for text in texts if text}


READERS = {"zxing-cpp": by_zxing, "zbar": by_zbar, "OpenCV": by_opencv}
