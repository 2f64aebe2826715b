// The camera while a tag is looked for: a panel over the screen with the picture. Frames go to the desk until it has found one.
"use strict";

const rest = (ms) => new Promise((next) => setTimeout(next, ms));

// A preview of this size shows a tag at an arm's length; more only takes longer.
const WIDEST = 1280;

function scan(token, hint) {
  const panel = document.createElement("dialog");
  panel.className = "camera";
  panel.setAttribute("aria-label", "Camera");
  const video = Object.assign(document.createElement("video"), { muted: true, playsInline: true });
  const said = Object.assign(document.createElement("p"), { textContent: hint });
  said.setAttribute("role", "status");
  const press = (label, deed) => {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "button", textContent: label });
    button.addEventListener("click", deed);
    return button;
  };
  let open = true;
  let stream = null;
  const close = () => {
    open = false;
    stream?.getTracks().forEach((track) => track.stop());
    panel.remove();
  };
  const refuse = (why) => {
    close();
    alone(async () => settle(await post(`/deliver?token=${encodeURIComponent(token)}`, { why })));
  };
  const photo = press("Photo of the tag", () =>
    choose((file) => {
      close();
      alone(async () => settle(await deliver(token, file)));
    }),
  );
  photo.hidden = true;
  const light = press("Light", () => {
    const track = stream.getVideoTracks()[0];
    const on = light.getAttribute("aria-pressed") !== "true";
    track.applyConstraints({ advanced: [{ torch: on }] }).then(() => light.setAttribute("aria-pressed", on), () => (light.hidden = true));
  });
  light.hidden = true;
  panel.append(video, said, light, photo, press("Stop scanning", () => refuse("The camera was closed.")));
  panel.addEventListener("cancel", (event) => {
    event.preventDefault();
    refuse("The camera was closed.");
  });
  document.body.append(panel);
  panel.showModal();

  const watch = async () => {
    const wanted = { facingMode: "environment", width: { ideal: WIDEST }, height: { ideal: 720 } };
    stream = await navigator.mediaDevices.getUserMedia({ video: wanted, audio: false });
    if (!open) return close();
    light.hidden = !stream.getVideoTracks()[0].getCapabilities?.().torch;
    video.srcObject = stream;
    await video.play();
    const canvas = document.createElement("canvas");
    const pen = canvas.getContext("2d", { willReadFrequently: true });
    while (open) {
      const answer = await post(frame(video, canvas, pen, token), canvas.luma, "application/octet-stream");
      if (!open) return;
      if (!answer) {
        await rest(40);
        continue;
      }
      const goesOn = answer.errands.some((errand) => errand.errand === "scan-tag");
      if (!goesOn) close();
      show(answer);
      said.textContent = document.getElementById("shell-notice")?.textContent.trim() || hint;
      // A code that is no tag is found in every frame: without a rest nobody could tap the way out.
      await rest(250);
    }
  };
  watch().catch((error) => {
    if (!open) return;
    said.textContent =
      error instanceof DOMException || error instanceof TypeError
        ? "This browser gives no camera here. Take a photo of the tag, or stop and type what is printed beside it."
        : error.message;
    photo.hidden = false;
  });
}

// Takes the picture's brightness into `canvas.luma`; the address that it is sent to.
function frame(video, canvas, pen, token) {
  const share = Math.min(1, WIDEST / video.videoWidth);
  const width = (canvas.width = Math.round(video.videoWidth * share));
  const height = (canvas.height = Math.round(video.videoHeight * share));
  pen.drawImage(video, 0, 0, width, height);
  const { data } = pen.getImageData(0, 0, width, height);
  const luma = new Uint8Array(width * height);
  // ITU-R BT.601, in whole numbers.
  for (let at = 0, from = 0; at < luma.length; at += 1, from += 4) {
    luma[at] = (77 * data[from] + 150 * data[from + 1] + 29 * data[from + 2]) >> 8;
  }
  canvas.luma = luma;
  return `/frame?token=${encodeURIComponent(token)}&width=${width}&height=${height}&turn=${form().dataset.turn}`;
}
