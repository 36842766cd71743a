import { twoPeople } from './two-people'

twoPeople({ secondHasScript: true })
