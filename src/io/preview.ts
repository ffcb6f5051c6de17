import { spawn } from "node:child_process";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/** A page on this machine alone, shown anew when it changes. url: where; changed: tells the browsers; close: ends it. */
export type Preview = { url: string; changed: () => void; close: () => void };

/** The frame around the page: it reloads what it holds, so that the page itself stays as it is handed over. */
const frame = `<!doctype html><meta charset="utf-8"><title>hearthsheet</title>
<style>html,body,iframe{margin:0;border:0;width:100%;height:100%;display:block}</style>
<iframe title="handout" src="/page"></iframe>
<script>new EventSource("/changed").onmessage=()=>document.querySelector("iframe").contentWindow.location.reload()</script>`;

const headers = { "cache-control": "no-store", "x-content-type-options": "nosniff", "referrer-policy": "no-referrer" };

/** Serves a page to browsers of this machine. page: its bytes as they are now, or null while there are none. */
export async function openPreview(page: () => Promise<Uint8Array | null>): Promise<Preview> {
  const listening = new Set<ServerResponse>();
  const answer = async (request: IncomingMessage, response: ServerResponse) => {
    // A name that leads here from a site elsewhere must not read an owner's page.
    const { port } = server.address() as AddressInfo;
    if (request.headers.host !== `127.0.0.1:${port}` || request.method !== "GET") return response.writeHead(403).end();
    if (request.url === "/changed") {
      response.writeHead(200, { ...headers, "content-type": "text/event-stream" }).flushHeaders();
      listening.add(response);
      response.on("close", () => listening.delete(response));
      return response;
    }
    const html = { ...headers, "content-type": "text/html; charset=utf-8" };
    if (request.url === "/") return response.writeHead(200, html).end(frame);
    const bytes = request.url === "/page" ? await page() : null;
    return bytes ? response.writeHead(200, html).end(bytes) : response.writeHead(404).end();
  };
  const server = createServer((request, response) => {
    answer(request, response).catch(() => response.destroy());
  });
  await new Promise<void>((done, fail) => server.once("error", fail).listen(0, "127.0.0.1", done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    changed: () => {
      for (const response of listening) response.write("data: changed\n\n");
    },
    close: () => {
      for (const response of listening) response.end();
      server.close();
    },
  };
}

/** Opens an address in the browser of this system; where there is none, the address has been told. */
export function openBrowser(url: string): void {
  const [command = "", ...args] =
    process.platform === "darwin" ? ["open"] : process.platform === "win32" ? ["cmd", "/c", "start", ""] : ["xdg-open"];
  spawn(command, [...args, url], { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}
