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
  /** The number of the step of the history that this is; absent in records of older programs. */
  readonly present?: number;
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

/** One step of a slot's history. The numbers of steps that follow one another do too. */
export interface SavedStep {
  readonly slot: string;
  readonly number: number;
  /** What a person did. */
  readonly label: string;
  readonly text: string;
}

/** What a save does to the steps of its slot: some are written, and all but the numbers `first` … `last` are removed. */
export interface StepChange {
  readonly put: readonly SavedStep[];
  readonly first: number;
  readonly last: number;
}

export interface Store {
  /** Writes a course and its steps, both or neither. */
  put(record: SavedRecord, steps?: StepChange): Promise<void>;
  records(): Promise<readonly SavedRecord[]>;
  record(slot: string): Promise<SavedRecord | undefined>;
  /** Oldest first. */
  versions(slot: string): Promise<readonly SavedVersion[]>;
  /** By number. */
  steps(slot: string): Promise<readonly SavedStep[]>;
  remove(slot: string): Promise<void>;
  /** Frees space: drops all earlier states, of every slot. */
  dropVersions(): Promise<void>;
  /** Frees space: drops the steps of every slot. */
  dropSteps(): Promise<void>;
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
  const done = new Map<string, readonly SavedStep[]>();
  return {
    async put(record, steps) {
      records.set(record.slot, record);
      const before = earlier.get(record.slot) ?? [];
      const version = nextVersion(record, before.at(-1));
      const others = before.filter((each) => each.number !== version.number);
      earlier.set(record.slot, [...others, version].slice(-MOST_VERSIONS));
      if (steps === undefined) return;
      const { put, first, last } = steps;
      const byNumber = new Map([...(done.get(record.slot) ?? []), ...put].map((step) => [step.number, step]));
      const kept = [...byNumber.values()].filter(({ number }) => number >= first && number <= last);
      done.set(
        record.slot,
        kept.sort((a, b) => a.number - b.number),
      );
    },
    records: async () => [...records.values()],
    record: async (slot) => records.get(slot),
    versions: async (slot) => earlier.get(slot) ?? [],
    steps: async (slot) => done.get(slot) ?? [],
    async remove(slot) {
      records.delete(slot);
      earlier.delete(slot);
      done.delete(slot);
    },
    dropVersions: async () => earlier.clear(),
    dropSteps: async () => done.clear(),
  };
}
