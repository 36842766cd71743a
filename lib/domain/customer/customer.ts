export const CONTACT_WAYS = ['phone', 'e-mail', 'text message', 'post'] as const
export type ContactWay = (typeof CONTACT_WAYS)[number]

export type Customer = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
  readonly preferredContact: ContactWay
  readonly note: string
  readonly version: number
}

export type CustomerDetails = Omit<Customer, 'id' | 'version'>
