/** What ships with the tool is not as it should be. The message names files of the package and nothing of a plan. */
export class BrokenHouse extends Error {
  override name = "BrokenHouse";
}
