import { styleText } from "node:util";

type Style = Parameters<typeof styleText>[0];

/** Where the tool speaks: results go to out, everything said about them to err. Each takes whole lines. */
export type Terminal = {
  out: (line: string) => void;
  err: (line: string) => void;
  /** What is being done, on a terminal only: the next line written takes its place. */
  progress: (text: string) => void;
  /** Colours words for err; leaves them alone where there is no colour. */
  style: (style: Style, text: string) => string;
  /** Columns of err, and whether somebody sees it in them: a file or another program takes lines whole. */
  width: number;
  seen: boolean;
  /** Whether err shows colour. */
  colour: boolean;
};

/** How a terminal looks, for a thread that cannot see it. */
export type Look = Pick<Terminal, "width" | "seen" | "colour">;

const eraseLine = "\r\u001b[K";

/** look: what is known of the terminal already, where this thread cannot see it. */
export function terminal(look: Partial<Look> = {}): Terminal {
  const { stdout, stderr, env } = process;
  const colour = look.colour ?? Boolean(stderr.isTTY && !env["NO_COLOR"] && env["TERM"] !== "dumb");
  const width = look.width ?? Math.max(40, stderr.columns ?? 140);
  const seen = look.seen ?? stderr.isTTY === true;
  let passing = "";
  const clear = () => {
    if (passing !== "") stderr.write(eraseLine);
    passing = "";
  };
  return {
    out: (line) => {
      clear();
      stdout.write(`${line}\n`);
    },
    err: (line) => {
      clear();
      stderr.write(`${line}\n`);
    },
    progress: (text) => {
      if (!stderr.isTTY) return;
      clear();
      passing = text.slice(0, width - 1);
      stderr.write(passing);
    },
    style: (style, text) => (colour ? styleText(style, text, { validateStream: false }) : text),
    width,
    seen,
    colour,
  };
}
