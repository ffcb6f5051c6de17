import { Buffer } from "node:buffer";
import { PNG } from "pngjs";

/** grey: the picture of a paper; colour: that of a screen. */
export type Kind = "grey" | "colour";

/** A PNG drawn `times` too large, averaged down: little is left of how one program or another softens the edges of letters. */
export function averaged(bytes: Uint8Array, times: number): PNG {
  const large = PNG.sync.read(Buffer.from(bytes));
  const small = new PNG({ width: Math.floor(large.width / times), height: Math.floor(large.height / times) });
  for (let y = 0; y < small.height; y++)
    for (let x = 0; x < small.width; x++)
      for (let channel = 0; channel < 4; channel++) {
        let sum = 0;
        for (let down = 0; down < times; down++)
          for (let across = 0; across < times; across++)
            sum += large.data[((y * times + down) * large.width + x * times + across) * 4 + channel] ?? 0;
        small.data[(y * small.width + x) * 4 + channel] = Math.round(sum / times ** 2);
      }
  return small;
}

// ISO/IEC 15948, 11.2.2: colour type 0 is shades of grey, 2 is RGB.
export const bytesOf = (picture: PNG, kind: Kind): Uint8Array =>
  PNG.sync.write(picture, {
    colorType: kind === "grey" ? 0 : 2,
    inputColorType: 6,
    inputHasAlpha: true,
    deflateLevel: 9,
  });
