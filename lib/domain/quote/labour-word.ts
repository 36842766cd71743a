import type { Words } from '@/lib/domain/words'

export const labourWord = ({ locale }: Pick<Words, 'locale'>): string => (locale === 'en-US' ? 'Labor' : 'Labour')
