import type { Species } from "#compute/facts.js";

type Mark = [x: number, y: number];
const both = (dog: Mark, cat: Mark): Record<Species, Mark[]> => ({ dog: [dog], cat: [cat] });

/**
 * Where each site of shared/sites.json lies on the bodies of ./drawings/bodies.ts. A site that may be a front or a hind leg
 * has no mark: a ring on the wrong leg is worse than none.
 */
export const marks: Record<string, Record<Species, Mark[]>> = {
  cheek: both([51, 55], [57, 64]),
  face: both([40, 52], [44, 58]),
  eyelid: both([50, 40], [48, 52]),
  eye: both([50, 40], [48, 52]),
  ear: both([68, 42], [50, 35]),
  nose: both([22, 52], [35, 60]),
  lip: both([28, 60], [39, 66]),
  jaw: both([42, 63], [48, 71]),
  mouth: both([30, 59], [40, 65]),
  head: both([57, 42], [57, 48]),
  forehead: both([56, 29], [58, 41]),
  neck: both([80, 58], [76, 66]),
  chest: both([100, 88], [100, 92]),
  back: both([140, 57], [140, 62]),
  rump: both([182, 60], [180, 67]),
  flank: both([150, 82], [152, 86]),
  belly: both([140, 101], [140, 109]),
  shoulder: both([92, 76], [90, 82]),
  armpit: both([100, 104], [99, 108]),
  groin: both([168, 101], [166, 106]),
  hip: both([182, 68], [180, 74]),
  "upper-front-leg": both([95, 112], [96, 116]),
  thigh: both([184, 88], [180, 98]),
  elbow: both([100, 112], [100, 114]),
  knee: both([170, 105], [168, 112]),
  "front-leg": both([96, 121], [96, 125]),
  "hind-leg": both([184, 108], [181, 113]),
  "lower-front-leg": both([96, 130], [95, 133]),
  "lower-hind-leg": both([189, 122], [184, 126]),
  "front-paw": both([93, 147], [93, 148]),
  "hind-paw": both([186, 147], [184, 148]),
  "tail-base": both([197, 59], [194, 74]),
  tail: both([218, 40], [226, 56]),
  perineum: both([199, 74], [196, 86]),
  scrotum: both([190, 100], [190, 98]),
};
