/**
 * A course in the address of a page: `#course=1.…`. The part of an address behind the `#` is never sent to a server. It is
 * the packed course as JSON under deflate, with two bytes before it that tell a damaged link.
 */
import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';
import { type Course, currentLayout } from '../course/course.ts';
import { base64Url, bytesOfBase64Url } from '../text/base64.ts';
import { parsedJson } from './json.ts';
import { DICTIONARY } from './link/link-dictionary.ts';
import { truckOfWhatLies } from './link/link-truck.ts';
import { isSameProof, packed, proofOf, unpacked } from './link/packed-course.ts';
import { type CourseReading, readCourse } from './read.ts';

/** What the part behind the `#` begins with. The same stands in app/link/link-in-address.ts. */
const MARK = '#course=';
/** The form of what is packed, with its dictionary. A new one is a new number; the old ones are read on. */
const LINK_VERSION = 1;
/** Signs. The largest course of the starters has some 700. */
const LONGEST_LINK = 20_000;

/** CRC-16 (CCITT). */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffff;
  for (const byte of bytes) {
    crc ^= byte << 8;
    for (let bit = 0; bit < 8; bit += 1) crc = ((crc << 1) ^ (crc & 0x8000 ? 0x1021 : 0)) & 0xffff;
  }
  return crc;
}

/**
 * The address that opens the shown layout of a course, with its arena and its class; without truck, day, waivers and
 * entries. Lengths are rounded to 0.01 mm, so it rides the same. The same course and base give the same link.
 */
export function courseLink(course: Course, base: string): string {
  const text = strToU8(JSON.stringify(packed(course)));
  const crc = checksum(text);
  const squeezed = deflateSync(text, { level: 9, dictionary: strToU8(DICTIONARY) });
  const bytes = new Uint8Array([crc >> 8, crc & 255, ...squeezed]);
  return `${base.replace(/#.*$/, '')}${MARK}${LINK_VERSION}.${base64Url(bytes)}`;
}

function refused(why: string): CourseReading {
  return { kind: 'refused', why };
}

const DAMAGED = refused(
  'The link is damaged: a part of it is missing or was changed on the way. Copy the whole link, or scan the code again.',
);

function textOf(bytes: Uint8Array): string | undefined {
  try {
    const text = inflateSync(bytes.subarray(2), { dictionary: strToU8(DICTIONARY) });
    return checksum(text) === ((bytes[0] ?? 0) << 8) + (bytes[1] ?? 0) ? strFromU8(text) : undefined;
  } catch {
    // It is no deflated text, or it ends too soon.
    return undefined;
  }
}

/** Reads the part of an address from its `#` on. Never throws. A course that is read is frozen, and has all that a file has. */
export function courseFromLink(hash: string): CourseReading {
  const [, version, body = ''] = /^#course=(\d+)\.(.*)$/.exec(hash) ?? [];
  if (version === undefined || hash.length > LONGEST_LINK) return DAMAGED;
  if (Number(version) > LINK_VERSION) {
    return refused(
      'The link was made by a newer Polewright than this one. Reload the page to get the newest, and open it again.',
    );
  }
  const bytes = bytesOfBase64Url(body);
  const text = bytes === undefined ? undefined : textOf(bytes);
  if (text === undefined) return DAMAGED;
  const json = parsedJson(text);
  const found = json.kind === 'read' ? unpacked(json.value) : undefined;
  if (found === undefined) return DAMAGED;
  const reading = readCourse(JSON.stringify(found.file));
  if (reading.kind === 'refused') return reading;
  const { course } = reading;
  if (!isSameProof(proofOf(currentLayout(course)), found.proof)) {
    return refused(
      'The link was made by another version of Polewright, which built an obstacle of it otherwise. Ask for the course as a file.',
    );
  }
  return { ...reading, course: { ...course, truck: truckOfWhatLies(course) } };
}
