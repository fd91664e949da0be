package protection

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`A fuse protects the wire, not the thing at the end of it. A pump that takes {{branch.current}}
would be happy behind any fuse from {{branch.smallest}} up; the wire would not. When a staple goes through it close to the
battery, {{upgrade.before}} and more flow, and the only question left is whether something opens before the insulation burns.

So there are five questions, and a circuit must pass all of them. Which device lies between what the load needs and what the
wire may have? Does everything else in its path bear it? Does it sit where it protects? On a short at its own place, can it break
the current? And on a short at the far end, is the current enough to open it, soon enough? What the wire may carry for
heat, in its place and in its company, is the chapter before.`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: 15 A for 14 gauge, 20 A for 12, 30 A for 10, a fuse of 125 % of the load, close to the battery.
For short cool branches of a few amperes it is right. It fails in these ways:

- **The table has relatives.** For the same {{rule.size}} with {{rule.class}} insulation the RV limits give {{rule.rv}}, the
  National Electrical Code {{rule.nec}}, and the rule for boats {{rule.boat}}. Each is meant for another place. A
  number without the name of its rule set is no number, so in this library the rule set is always an input and no
  function looks for the kindest.
- **The load is not what the label says.** An inverter of {{inverter.power}} takes {{inverter.current}} on a tired battery, and its
  fuse must carry {{inverter.needed}}.
- **The cable is not alone in its path.** A fuse of {{path.fuse}} suits its cable, and the {{path.weak}} in the same path bears
  {{path.bears}}.
- **The fuse is never asked.** The short at the end of {{lamp.one_way}} of {{lamp.size}} is {{lamp.short}}. A main fuse of
  {{lamp.fuse}} carries that for ever.
- **The fuse is asked too much.** Lithium batteries, {{upgrade.batteries}} side by side, give {{upgrade.after}} into a
  short; a fuse that can break {{upgrade.breaks}} may burst.
- **The fuse takes its time.** A thermoplastic wire of {{slow.size}} bears {{slow.short}} for {{slow.borne}}; a fuse that needs {{slow.opens}}
  for it saves nothing.

How close is close to the battery? {{place_rules.rv}} by NEC 552.10(E)(4), as an article on the edition of 2020 says. On a boat
{{place_rules.open}} in the open, {{place_rules.sheathed}} in a sheath or an enclosure (33 CFR 183.455), and {{place_rules.post}} on a
conductor that begins at the battery post (183.460, from memory). The NEC has its rules for taps, which are not judged here. All of these
are exceptions to one sentence: what lies before the device has no protection.

The limits of the RV rule set are from memory, and end at 10 AWG; where they come from is told in the chapter on ampacity. In the
figure that is the step from 10 to 8 AWG: a free-air value is for one cable with air all round it, and the NEC's, for wires
in a raceway or a sheath, is what the same cable bears in a conduit.`)

const afterTheMath = weave.Prose(`Where the limit is not the ampacity:

- For copper of 18 to 10 AWG both the NEC (240.4(D)) and the RV table limit the device however high the ampacity is.
- Otherwise the NEC allows the next standard rating up if the ampacity is not itself one, to 800 A, and not on a branch
  circuit with more than one receptacle for portable loads (240.4(B), from memory).
- By the NEC the conductor, too, must have the quarter in hand for a load of hours (210.19(A), from memory), so the step
  up does not help there.
- On a boat under 50 V the device may be 150 % of the ampacity (33 CFR 183.455). It then protects against shorts, and in
  part only against overload.

That the far short is above the rating is a bare minimum. A fuse opens at once on many times its rating, and may take minutes on
a little more than it; below three times the rating the library says so. How long it takes is on its own curve, which is not worked
out here: read it there, and give it. The device must break the short of a cold cable and open on that of a warm one, so
the near short is worked out at 20 °C and the far one at 75 °C.

The withstand ends at 5 s. Beyond that, heat leaves through the insulation and the formula is too strict by more and more, so a
longer time is refused and not answered. A short so weak that it lasts longer is an overload, and wants a device not above the ampacity. Nor are arcs
in it, which hold the current below that of the bolted short and burn where they stand.`)

const howToAsk = weave.Prose(`## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show protection -example branch \
        -set size="10 AWG" -set rules="NEC 2017"`)

const aboutWithstand = weave.Prose(`## How long a wire bears a short

The lines are parallel: twice the current, a quarter of the time. They begin at 5 s, where the method ends. A fuse protects a wire
from shorts if its own curve lies below the wire's line wherever a short can be.`)

const beforeFactors = weave.Prose(`The factor k can be held against the formula it comes from. A standard of the cable trade in North America counts
in circular mils, with constants of its own.`)

const beforeFuses = weave.Prose(`The RV limits are from memory, so it is worth seeing what another trade that builds light and strings
wires through walls has in print. It does not prove them.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The fuse that kept blowing.** Somebody puts in the next larger one, and the wire becomes the fuse. If a fuse
  opens, the load has grown or something is wrong; a larger fuse needs a larger wire first.
- **The part nobody listed.** Switch, shunt, bus bar and terminals are in the path too. The path may carry what its
  weakest part may; an old battery switch survives every upgrade.
- **The upgrade nobody summed.** A second battery, a shorter cable, a thicker link: each makes the short larger. The fuse
  that could break it before is still there.
- **The rating that is not printed.** A breaker without an interrupting rating for direct current has none that you know of. The
  library says that it is not stated, and does not guess.
- **A fuse for the wrong voltage.** A fuse breaks direct current up to a voltage that is printed on it, and a breaker for
  alternating current need not break direct current at all. At 48 V the blade fuse of a car is not a fuse.
- **The loose holder.** A poor contact makes heat with less than the rated current. The fuse sees nothing; touch,
  look for brown plastic, and measure the voltage across it under load.
- **The protection inside the battery.** It may open on a short, once. It is no substitute for a fuse: it may fail closed, and
  it does not know the wire.
- **Tapping a thick cable with a thin wire.** Every step down in size needs its own fuse at the step.`)

const cautions = `Numbers here do not make an installation safe. The RV limits are from memory, the tables are for copper, and what
the wires pass through decides as much as their size. Find the standard that applies, and have a licensed electrician
look at the work. A short on a lithium bank throws molten metal: disconnect the battery before you touch its cables, take
off rings, and cover the posts.`
