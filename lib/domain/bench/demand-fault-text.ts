import type { Words } from '@/lib/domain/words'
import type { DemandFault } from './group-demand'

export function demandFaultText(fault: DemandFault, words: Words): string {
  switch (fault.code) {
    case 'no-type':
      return `The sheet does not say which ${words.tube} belongs in ${fault.sockets.join(', ')}. Note the type first.`
    case 'mixed-families':
      return `The sockets of this group hold different families (${fault.families.join(', ')}). A set is matched within one family: give them groups of their own on the sheet.`
    case 'too-many':
      return `This group has ${fault.count} sockets; a set has at most ${fault.most} ${words.tubes}. Split it into groups on the sheet.`
  }
}
