import type { Page } from "playwright-core";

/** What a screen reader meets, in order: the nodes of Chromium's own accessibility tree that have a role to tell. */
export type Met = { role: string; name: string; level: number | null };

type Node = {
  nodeId: string;
  ignored: boolean;
  role?: { value: string };
  name?: { value: string };
  childIds?: string[];
  properties?: { name: string; value: { value: unknown } }[];
};

export async function readAloud(page: Page): Promise<Met[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send("Accessibility.getFullAXTree")) as unknown as { nodes: Node[] };
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const walk = (node: Node | undefined): Met[] => {
    if (!node) return [];
    const level = node.properties?.find(({ name }) => name === "level")?.value.value;
    const met = {
      role: node.role?.value ?? "",
      name: node.name?.value ?? "",
      level: typeof level === "number" ? level : null,
    };
    return [...(node.ignored ? [] : [met]), ...(node.childIds ?? []).flatMap((id) => walk(byId.get(id)))];
  };
  return walk(nodes[0]);
}
