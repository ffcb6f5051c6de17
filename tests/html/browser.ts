import { type Browser, chromium } from "playwright-core";

/** Debian's own browser, with everything off that could ask the network for something. more: what else it is told. */
export const openBrowser = (more: string[] = []): Promise<Browser> =>
  chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      ...more,
    ],
  });
