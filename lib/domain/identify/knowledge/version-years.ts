/**
 * When a type, or a version of it, was first made. Only "not before" is given: most were made for
 * decades, many are made again. The years of published ones differ by a year or so between pages, and
 * the earliest printed one is taken; those from memory are set a year or two early on purpose.
 */
import type { KnowledgeSourceKey } from '../knowledge-source'

type From = readonly [year: number, source: KnowledgeSourceKey]

export const TYPE_YEARS: Readonly<Record<string, From>> = {
  '6V6': [1937, 'type-history'],
  '6L6': [1936, 'type-history'],
  KT66: [1937, 'type-history'],
  EL34: [1953, 'type-history'],
  EL37: [1944, 'memory'],
  EL84: [1953, 'type-history'],
  '7189': [1956, 'memory'],
  KT77: [1955, 'memory'],
  KT88: [1956, 'memory'],
  '6550': [1954, 'memory'],
  '7591': [1958, 'type-history'],
  '7868': [1959, 'memory'],
  '6973': [1957, 'memory'],
  '6AQ5': [1944, 'memory'],
  '6K6GT': [1936, 'memory'],
  '6F6': [1935, 'memory'],
  ECL82: [1954, 'memory'],
  '2A3': [1932, 'memory'],
  '45': [1928, 'memory'],
  '300B': [1937, 'memory'],
  '12AX7': [1947, 'type-history'],
  '5751': [1949, 'memory'],
  '12AT7': [1945, 'memory'],
  '12AU7': [1945, 'memory'],
  '12AY7': [1947, 'memory'],
  '12BH7A': [1949, 'memory'],
  '12AV7': [1948, 'memory'],
  '12DW7': [1957, 'memory'],
  '6EU7': [1958, 'memory'],
  '6SN7GTB': [1939, 'type-history'],
  '6SL7GT': [1939, 'memory'],
  '6J5': [1936, 'memory'],
  '6SC7': [1937, 'memory'],
  EF86: [1953, 'type-history'],
  '6AU6': [1944, 'memory'],
  '5Y3GT': [1935, 'memory'],
  '5U4G': [1935, 'memory'],
  '5U4GB': [1952, 'memory'],
  '5V4G': [1935, 'memory'],
  '5AR4': [1953, 'memory'],
  '5R4GY': [1940, 'memory'],
  '6X4': [1944, 'memory'],
  EZ80: [1950, 'memory'],
  EZ81: [1953, 'memory'],
}

/** Of a version, where it came later than its type. */
export const DESIGNATION_YEARS: Readonly<Record<string, From>> = {
  '6V6GT': [1939, 'memory'],
  '6V6GT/G': [1941, 'memory'],
  '6V6GTA': [1955, 'memory'],
  '6L6GA': [1941, 'memory'],
  '6L6GB': [1946, 'memory'],
  '5881': [1949, 'memory'],
  '6L6WGB': [1950, 'memory'],
  '6L6GC': [1957, 'memory'],
  '7025': [1956, 'memory'],
  '6SN7GTA': [1948, 'memory'],
  '6SN7GT': [1939, 'type-history'],
  '6SN7GTB': [1952, 'memory'],
  '6AQ5A': [1954, 'memory'],
  '7189A': [1957, 'memory'],
  '6550A': [1970, 'memory'],
  '12AX7A': [1953, 'memory'],
  '12AU7A': [1953, 'memory'],
}

/** Signal Corps numbers end with JAN, which begins about 1943; CV numbers begin in the war. */
export const SERVICE_YEARS = {
  civil: { from: null, to: null },
  jan: { from: 1943, to: null },
  'signal-corps': { from: null, to: 1946 },
  'common-valve': { from: 1941, to: null },
  'british-service': { from: null, to: 1946 },
} as const
