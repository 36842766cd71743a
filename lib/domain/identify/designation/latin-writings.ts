/** How a Cyrillic number is written with Latin letters: by sound (6P3S) and, where all of them do, by their looks (6H8C). From memory. */

const SOUNDS: Readonly<Record<string, string>> = {
  ...{ А: 'A', Б: 'B', В: 'V', Г: 'G', Д: 'D', Е: 'E', Ж: 'ZH', И: 'I', К: 'K', Л: 'L', М: 'M', Н: 'N' },
  ...{ П: 'P', Р: 'R', С: 'S', Т: 'T', Ф: 'F', Х: 'KH', Ц: 'TS' },
}

const LOOKS: Readonly<Record<string, string>> = {
  ...{ А: 'A', В: 'B', Е: 'E', К: 'K', М: 'M', Н: 'H', О: 'O', Р: 'P', С: 'C', Т: 'T', Х: 'X' },
}

const LETTER = /[А-Я]/

const written = (number: string, letters: Readonly<Record<string, string>>): string =>
  [...number].map((letter) => letters[letter] ?? letter).join('')

export function latinWritings(number: string): readonly string[] {
  return [written(number, SOUNDS), written(number, LOOKS)].filter((writing) => !LETTER.test(writing))
}
