/**
 * What can be looked at on a bottle: the question in bench words and the answers one can give.
 * Every one may be skipped. The order is that of the form: from what needs no tool to the ohmmeter.
 */
export const OBSERVATIONS = {
  bulb: {
    label: 'Bulb',
    question: 'What shape is the bulb, and how thick at its thickest? Lay a caliper or a ruler across.',
    choices: {
      metal: 'metal can',
      'T-5½': 'thin glass, about 18 mm, pins straight out of it (T-5½)',
      'T-6½': 'thin glass, about 21 mm, pins straight out of it (T-6½)',
      'T-9': 'straight, about 29 mm (T-9)',
      'T-12': 'straight, 32 to 40 mm (T-10 to T-12)',
      'ST-12': 'shouldered, about 38 mm (ST-12)',
      'ST-14': 'shouldered, about 44 mm (ST-14)',
      'ST-16': 'shouldered, about 51 mm (ST-16)',
      'ST-19': 'shouldered, about 60 mm (ST-19)',
      broad: 'broad, straight or bulging, 45 to 55 mm',
      globe: 'globe without a shoulder (S)',
    },
  },
  base: {
    label: 'Base',
    question: 'Which base is it, seen from the pins? In the drawings pin 1 is ringed.',
    choices: {
      octal: 'octal: key in the middle, eight places',
      noval: 'noval: nine thin pins in the glass, a gap',
      'miniature-7': 'seven thin pins in the glass, a gap',
      novar: 'novar: nine pins in a large glass base',
      'four-pin': 'four pins, two of them thicker',
      loctal: 'loctal: thin pins and a locking groove',
      'other-base': 'another one',
    },
  },
  baseMaterial: {
    label: 'Base material',
    question: 'What is the base made of, and which colour is it?',
    choices: {
      black: 'black',
      coin: 'black, a flat disc (coin base)',
      brown: 'brown, a little glittering',
      ceramic: 'white ceramic',
      collar: 'metal collar round it',
      glass: 'none: the pins come out of the glass',
    },
  },
  pins: {
    label: 'Pins present',
    question: 'How many pins are really there? Octal bases often miss some.',
    choices: { '4': '4', '5': '5', '6': '6', '7': '7', '8': '8', '9': '9' },
  },
  plates: {
    label: 'Plates',
    question: 'Look into the bulb: how many %plates stand in it?',
    choices: { one: 'one', alike: 'two, alike', unlike: 'two, of different size' },
  },
  cathode: {
    label: 'Cathode',
    question: 'Is there a cathode sleeve with the heater in it, or a bare wire that glows itself?',
    choices: { sleeve: 'a sleeve', filament: 'a bare wire or ribbon (filament)' },
  },
  topCap: {
    label: 'Top cap',
    question: 'Is there a metal cap on top?',
    choices: { 'no-cap': 'no', cap: 'yes' },
  },
  shield: {
    label: 'Inner shield',
    question: 'Is there a shield inside, round the %plate or between the two?',
    choices: { 'no-shield': 'none', mesh: 'mesh or can round it', between: 'sheet between the two' },
  },
  glass: {
    label: 'Glass',
    question: 'How does the glass look?',
    choices: { clear: 'clear', smoked: 'blackened or smoked from inside', sprayed: 'sprayed with metal from outside' },
  },
  micas: {
    label: 'Micas',
    question: 'How many mica discs hold the works? Count top and bottom.',
    choices: { two: 'two', three: 'three', more: 'four or more, or with springs' },
  },
  getterPlace: {
    label: 'Getter place',
    question: 'Where is the mirror of the getter?',
    choices: {
      top: 'at the top',
      side: 'at the side',
      bottom: 'at the bottom',
      two: 'at two places',
      unseen: 'none to be seen',
    },
  },
  getterShape: {
    label: 'Getter holder',
    question: 'Which shape has the little frame that carried the getter?',
    choices: {
      cup: 'flat pan or cup on a stem',
      square: 'rectangular or square',
      d: 'D-shaped wire',
      ring: 'round ring of larger diameter (halo)',
      disc: 'small ring, dimpled disc or saucer',
    },
  },
  flash: {
    label: 'Getter colour',
    question: 'Which colour has the getter?',
    choices: { dark: 'silver, brown or black mirror', white: 'chalk-white', faded: 'gone or nearly gone' },
  },
  plateColour: {
    label: '%Plate colour',
    question: 'Which colour is the %plate?',
    choices: { grey: 'grey', 'black-plate': 'black', shiny: 'shiny metal' },
  },
  plateShape: {
    label: '%Plate surface',
    question: 'Is the %plate ribbed or smooth?',
    choices: { ribbed: 'ribbed', smooth: 'smooth' },
  },
  plateLength: {
    label: '%Plate length',
    question: 'How long are the %plates? In a 12AX7 about 17 mm is long and 14 mm is short.',
    choices: { long: 'long (17 mm)', short: 'short (14 mm)' },
  },
  heaterPins: {
    label: 'Heater between pins',
    question: 'Cold and out of the socket: between which pins does the ohmmeter show a few ohms?',
    choices: {
      '2-7': '2 and 7',
      '2-8': '2 and 8',
      '7-8': '7 and 8',
      '4-5': '4 and 5, nothing to 9',
      '4-5-9': '4 and 5, half of it to 9',
      '3-4': '3 and 4',
      '1-4': '1 and 4',
      'other-pins': 'others',
    },
  },
} as const satisfies Readonly<
  Record<
    string,
    { readonly label: string; readonly question: string; readonly choices: Readonly<Record<string, string>> }
  >
>

export type ObservationKey = keyof typeof OBSERVATIONS
/** Of the observation; not checked against it by type. */
export type Choice = string

export const OBSERVATION_KEYS = Object.keys(OBSERVATIONS) as readonly ObservationKey[]

export const choicesOf = (key: ObservationKey): readonly Choice[] => Object.keys(OBSERVATIONS[key].choices)

export const isChoice = (key: ObservationKey, choice: string): boolean =>
  Object.hasOwn(OBSERVATIONS[key].choices, choice)

export function choiceWord(key: ObservationKey, choice: Choice): string {
  const words: Readonly<Record<string, string>> = OBSERVATIONS[key].choices
  const word = words[choice]
  if (word === undefined) throw new Error(`${key} has no choice ${choice}`)
  return word
}
