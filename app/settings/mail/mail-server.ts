/** What the server was told about sending mail, without its secrets. */
export type MailServer =
  | { readonly state: 'none' }
  | { readonly state: 'unreadable' }
  | {
      readonly state: 'set'
      readonly host: string
      readonly encrypted: boolean
      readonly signsIn: boolean
      readonly from: string
    }

export function mailServerFrom(url: string | undefined, from: string | undefined): MailServer {
  if (!url?.trim()) return { state: 'none' }
  if (!URL.canParse(url)) return { state: 'unreadable' }
  const { protocol, host, hostname, username } = new URL(url)
  if (!/^smtps?:$/.test(protocol) || hostname === '') return { state: 'unreadable' }
  return { state: 'set', host, encrypted: protocol === 'smtps:', signsIn: username !== '', from: from?.trim() ?? '' }
}
