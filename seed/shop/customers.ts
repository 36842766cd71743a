/** Invented customers. Numbers 555-01xx and the example domains are reserved for such use. */
import type { CustomerDetails } from '@/lib/domain/customer/customer'

const customer = (
  name: string,
  phone: string,
  email: string,
  address: string,
  preferredContact: CustomerDetails['preferredContact'],
  note = '',
): CustomerDetails => ({ name, phone, email, address, preferredContact, note })

export const DEMO_CUSTOMERS = {
  odalys: customer('Odalys Prewitt', '555-0117', 'odalys.prewitt@example.com', '9 Kiln Lane\nQuillhaven', 'phone'),
  tomasz: customer(
    'Tomasz Wielgorski',
    '555-0123',
    'tomasz.w@example.net',
    '230 Lower Weir Street\nQuillhaven',
    'e-mail',
    'Plays Fridays: wants it back by Thursday night.',
  ),
  keziah: customer('Keziah Bellwood', '555-0131', 'keziah@example.org', '17 Orchard Steps\nQuillhaven', 'text message'),
  rui: customer('Rui Satoyama', '555-0138', 'rui.satoyama@example.com', '5 Signal Court, Unit 3\nQuillhaven', 'e-mail'),
  hollis: customer(
    'Hollis Granthorpe',
    '555-0142',
    'hollis.g@example.net',
    '88 Reservoir Road\nNorth Quillhaven',
    'phone',
    'Hi-fi. Keeps his own readings in a notebook; likes to see ours.',
  ),
  aino: customer('Aino Kettuvaara', '555-0149', 'aino.k@example.org', '12 Foundry Walk\nQuillhaven', 'e-mail'),
  dev: customer('Dev Raghuvan', '555-0153', 'dev.raghuvan@example.com', '301 Weir Street\nQuillhaven', 'text message'),
  marisol: customer(
    'Marisol Etxarrin',
    '555-0158',
    '',
    '64 Chandler Hill\nQuillhaven',
    'phone',
    'No e-mail. Call after four.',
  ),
  cormac: customer(
    'Cormac Trelawner',
    '555-0164',
    'cormac.t@example.net',
    'Rural Route 2, Box 19\nAldershade',
    'phone',
  ),
  yusuf: customer('Yusuf Demirkaya', '555-0169', 'yusuf.d@example.org', '7 Bobbin Street\nQuillhaven', 'text message'),
  tannery: customer(
    'Low Tannery Rehearsal Rooms',
    '555-0175',
    'backline@example.com',
    '2 Low Tannery Yard\nQuillhaven',
    'e-mail',
    'House amps. Ask for Ingrid Solbakken; nobody else orders work.',
  ),
  ludmila: customer(
    'Ludmila Hraskova',
    '555-0182',
    'l.hraskova@example.net',
    '150 Terrace Avenue\nQuillhaven',
    'e-mail',
  ),
  millrace: customer(
    'Millrace Community Hall',
    '555-0190',
    'hall@example.org',
    '1 Millrace Green\nQuillhaven',
    'post',
    'Caretaker: Dorothea Finchley. Invoice by post.',
  ),
} satisfies Record<string, CustomerDetails>

export type CustomerKey = keyof typeof DEMO_CUSTOMERS
