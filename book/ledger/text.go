package ledger

import "example.com/drawbar/book/weave"

const afterTheRig = weave.Prose(`### The ledger, line by line

The same day as a table. The loads behind the inverter have no ampere-hours here: at 120 V they mean nothing to a
battery. They appear once the sum has been carried to the bank.

| Load | Bus | Running | Hours a day | Energy a day | Charge at 12 V |
| --- | --- | ---: | ---: | ---: | ---: |
| gas and CO detector, must not stop | 12 V | {{lines.detector_power}} | {{lines.detector_time}} | {{lines.detector_energy}} | {{lines.detector_charge}} |
| six lamps, 17:30 to 22:00 | 12 V | {{lines.lamps_power}} | {{lines.lamps_time}} | {{lines.lamps_energy}} | {{lines.lamps_charge}} |
| water pump | 12 V | {{lines.pump_power}} | {{lines.pump_time}} | {{lines.pump_energy}} | {{lines.pump_charge}} |
| furnace blower, 21:00 to 07:00 | 12 V | {{lines.furnace_power}} | {{lines.furnace_time}} | {{lines.furnace_energy}} | {{lines.furnace_charge}} |
| refrigerator | 12 V | {{lines.fridge_power}} | {{lines.fridge_time}} | {{lines.fridge_energy}} | {{lines.fridge_charge}} |
| sample freezer, must not stop | 12 V | {{lines.freezer_power}} | {{lines.freezer_time}} | {{lines.freezer_energy}} | {{lines.freezer_charge}} |
| call recorder, 18:30 to 05:30, must not stop | 12 V | {{lines.recorder_power}} | {{lines.recorder_time}} | {{lines.recorder_energy}} | {{lines.recorder_charge}} |
| radar, 19:30 to 00:30 | 12 V | {{lines.radar_power}} | {{lines.radar_time}} | {{lines.radar_energy}} | {{lines.radar_charge}} |
| modem, must not stop | 12 V | {{lines.modem_power}} | {{lines.modem_time}} | {{lines.modem_energy}} | {{lines.modem_charge}} |
| two laptops, 18:30 to 22:30 | 120 V | {{lines.laptops_power}} | {{lines.laptops_time}} | {{lines.laptops_energy}} | |
| logger, must not stop | 120 V | {{lines.logger_power}} | {{lines.logger_time}} | {{lines.logger_energy}} | |
| coffee maker | 120 V | {{lines.coffee_power}} | {{lines.coffee_time}} | {{lines.coffee_energy}} | |
| microwave | 120 V | {{lines.oven_power}} | {{lines.oven_time}} | {{lines.oven_energy}} | |

If everything on the 12 V bus ran at once it would take {{lines.at_once}}. That is a question for fuses and cables, and
duty and hours play no part in it.`)

const beforeTheDay = weave.Prose(`### The whole trailer through a day

Loads with a time of day stand where they belong; those with hours only, such as the pump, are spread evenly. Each step
is a mean: {{lines.coffee_power}} for {{lines.coffee_time}} in the morning shows as {{lines.coffee_step}}. The figure is for energy
and for the shape of the day, not for peaks. Of what the 12 V bus uses, {{lines.night}} goes between 18:00 and 07:00, when in
October no sun comes in.`)

const beforePrint = weave.Prose(`## What print says

Published results beside ours. The first is the low column of a ledger for a supply away from the grid, line by
line.`)

const afterTheLedger = weave.Prose(`The printed total differs a little from ours, because the book rounds its lines to a watt-hour and then adds.
Its allowance for losses is half as much again, on everything; compare that with an efficiency and an idle power, which can be
read off a datasheet. The peak it then plans for is half of all loads together, a guess of its own.`)

const practice = weave.Prose(`## What goes wrong in practice

- **Hours from a good week.** A ledger written in September hardly knows the furnace. Write one for the month that
  matters, or two, and change duty and hours first.
- **The load nobody listed.** The detector, the control boards of the refrigerator and water heater, the radio's memory, the
  meter itself. Switch off all that you know of and measure what still flows.
- **The label of the adapter.** A laptop's adapter is marked with the most it can deliver. In use it gives a
  fraction of that, and a meter at the plug shows which.
- **The meter that reads amperes at 120 V.** A clamp shows volt-amperes divided by volts. With a poor power factor that is
  not the watts.
- **The inverter left on for one small thing.** See which load holds it on, and whether a 12 V version of that load exists.
- **Adding allowances to allowances.** A duty rounded up, an hour added, half again for losses: the bank comes out
  far larger than the need, and nobody knows which part of it was real.
- **Never checked.** A meter that counts ampere-hours at the bank, read morning and evening for a week, is worth more
  than every estimate here. If it and the ledger disagree, doubt the ledger first.`)

const cautions = `Some loads must not stop: medicine that is kept cold, a breathing machine, an animal that waits in the trailer, a
freezer. For them a ledger tells how long the bank may last; it does not watch over them. When the shore supply fails with nobody
there, an inverter takes over in silence. Such a load needs an alarm that still works when the shore supply is gone, that reaches
somebody, and that somebody answers; and a plan for the hours after. A gas furnace or heater belongs with a working carbon
monoxide detector, whose own small draw is a line in the ledger. Wiring for 120 V, and any work behind an inverter, is for local
codes and a licensed electrician.`
