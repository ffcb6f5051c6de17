import { note, stop } from "./kind.js";

type Nothing = Record<never, never>;
/** detail: the system's own short code, such as EIO. */
type Failed = { path: string; detail: string };

/** A file as a whole, before anything in it is understood; and the folder the results go into. */
export const fileKinds = {
  "file-empty": stop<Nothing>(),
  "file-not-text": stop<{ offset: number }>(),
  "file-too-large": stop<{ bytes: number; limit: number }>(),
  "file-not-found": stop<{ path: string }>(),
  "file-forbidden": stop<{ path: string }>(),
  "clinic-not-found": stop<{ path: string }>(),
  "file-is-folder": stop<{ path: string }>(),
  "file-unreadable": stop<Failed>(),
  "reviews-unreadable": stop<{ path: string }>(),
  "out-not-folder": stop<{ path: string }>(),
  "out-not-file": stop<{ path: string }>(),
  "out-forbidden": stop<{ path: string }>(),
  "out-full": stop<{ path: string }>(),
  "out-failed": stop<Failed>(),
  "out-busy": stop<{ path: string }>(),
  "out-stale-removed": note<{ path: string }>(),
  "out-changed-kept": note<{ path: string }>(),
};
