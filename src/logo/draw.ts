import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { PNG } from "pngjs";

type Box = { width: number; height: number };
export type Draw = (svg: string, box: Box) => (Box & { png: Uint8Array }) | null;

let ready: Promise<void> | undefined;

/**
 * Draws an SVG as PNG, as large as fits the box, on white and without transparency: so it shows the same on paper and on a dark
 * screen. null: it cannot be read, or nothing shows. resvg runs no script, opens no file and asks no network.
 */
export async function drawer(engine: Uint8Array): Promise<Draw> {
  ready ??= initWasm(engine as Uint8Array<ArrayBuffer>);
  await ready;
  return (svg, box) => {
    try {
      const whole = new Resvg(svg);
      const wide = whole.width / whole.height > box.width / box.height;
      const fitTo = wide
        ? ({ mode: "width", value: Math.round(box.width) } as const)
        : ({ mode: "height", value: Math.round(box.height) } as const);
      const { width, height, pixels } = new Resvg(svg, { fitTo, background: "#ffffff" }).render();
      const shows = pixels.some((value, i) => i % 4 < 3 && value < 250);
      if (!shows) return null;
      const image = Object.assign(new PNG({ width, height }), { data: Buffer.from(pixels) });
      return { width, height, png: new Uint8Array(PNG.sync.write(image, { colorType: 2, inputColorType: 6 })) };
    } catch {
      return null;
    }
  };
}
