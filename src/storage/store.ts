/**
 * Where the texts of courses are stored: the browser's database, or memory where there is none. Methods reject on
 * failure.
 */
export interface SavedRecord {
  readonly slot: string;
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly saved: number;
  readonly text: string;
}

/** An earlier state of a slot. Saves that follow each other closely share one. */
export interface SavedVersion {
  readonly slot: string;
  readonly number: number;
  /** When its first save was made; `saved` is the last. */
  readonly begun: number;
  readonly saved: number;
  readonly text: string;
}

export interface Store {
  put(record: SavedRecord): Promise<void>;
  records(): Promise<readonly SavedRecord[]>;
  record(slot: string): Promise<SavedRecord | undefined>;
  /** Oldest first. */
  versions(slot: string): Promise<readonly SavedVersion[]>;
  remove(slot: string): Promise<void>;
  /** Frees space: drops all earlier states, of every slot. */
  dropVersions(): Promise<void>;
}

/** So many earlier states of a slot are kept. */
export const MOST_VERSIONS = 20;
/** Saves within this many milliseconds of a version's first share it, so that twenty reach back over an afternoon. */
export const VERSION_SPAN = 120_000;

/** The version that a save goes into, given the newest there is. */
export function nextVersion({ slot, saved, text }: SavedRecord, newest: SavedVersion | undefined): SavedVersion {
  const shared = newest !== undefined && saved - newest.begun < VERSION_SPAN && saved >= newest.begun;
  if (shared) return { ...newest, saved, text };
  return { slot, number: (newest?.number ?? 0) + 1, begun: saved, saved, text };
}

/** A store that lasts as long as the page. */
export function memoryStore(): Store {
  const records = new Map<string, SavedRecord>();
  const earlier = new Map<string, readonly SavedVersion[]>();
  return {
    async put(record) {
      records.set(record.slot, record);
      const before = earlier.get(record.slot) ?? [];
      const version = nextVersion(record, before.at(-1));
      const others = before.filter((each) => each.number !== version.number);
      earlier.set(record.slot, [...others, version].slice(-MOST_VERSIONS));
    },
    records: async () => [...records.values()],
    record: async (slot) => records.get(slot),
    versions: async (slot) => earlier.get(slot) ?? [],
    async remove(slot) {
      records.delete(slot);
      earlier.delete(slot);
    },
    dropVersions: async () => earlier.clear(),
  };
}
