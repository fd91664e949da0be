package flatroof

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`The number on a panel is a promise about a laboratory: {{harvest.peak}} under a lamp of
1000 W/m² with cells at 25 °C. A roof is not that place. Near Chicago, on a mean day in October, panels of that size that lie
flat bring {{harvest.energy}}, which is {{harvest.mean}} if spread over day and night. In December they bring
{{rule.worst}}, in July {{rule.best}}, with cells at 25 °C.

This chapter answers the questions that decide whether a roof is worth its panels and whether the parts behind them live.
What does a day bring? What could it bring at most? How hot do the cells get, and what does that cost? What voltage
does a string have at the coldest sunrise, what comes out of the controller, and which strings need fuses?`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: watts of panel, times the peak sun hours of a map, times three quarters. For the roof of the first example
with {{harvest.irradiation}} that is {{rule.thumb}}, and the long way gives {{harvest.energy}}; the rule leaves room for the
controller and the charging, which the long way does not count. It is good when the hours are the right ones. It
fails in these ways:

- **The map is for tilted panels.** A sun-hour map usually shows the mean of a year on a rack that faces the equator at the
  angle of the latitude. In the typical year of Greensboro, North Carolina, that is {{rule.tilted_hours}}; flat on the roof the
  year has {{rule.flat_hours}}, and its December {{rule.december_hours}}. For each 100 W the map
  promises {{rule.promised}} a day. The roof brings {{rule.december}} in December, less than half of it.
- **A year's mean is not a month.** Near Chicago July has {{rule.times}} times the sun of December. A camp that runs in
  November needs November's number.
- **Losses do not add up.** The typical list of ten has a sum of {{rule.sum}}, but each takes its part of what the one
  before has left: together {{rule.lost}}. With small losses that is a small error; with ten of 10 % it is the
  difference between {{losses.kept}} and nothing.
- **The list is for a house.** It has 3 % for shade and nothing for snow. An air conditioner, a roof box or a tree can take half
  the morning, and a panel that lies flat keeps its leaves and its snow.
- **What could be had is not what is taken.** A bank that is full at noon takes nothing in the afternoon. The harvest is an
  upper bound until the bank has been run through the day with its loads.

The figure shows the year of the roof in two places. The sources of the irradiation are the typical years TMY2 94846
(Chicago) and 12839 (Miami) by Marion and Urban (1995), monthly means on level ground as a published climate file has
them; for Greensboro TMY3 723170 (Wilcox and Marion, NREL/TP-581-43156, 2008), averaged from its hours, with the tilted plane
worked out by the sky model of Perez and others (1990).`)

const theSunsMath = weave.Prose(`## The mathematics

**The sun.** Latitude and day of the year are enough for what arrives above the air. FAO Irrigation and Drainage Paper 56 has
it in five equations, 21 to 25, and the length of the day in a sixth, 34. Degrees become radians (22). The earth is a little nearer to the sun in January (23),
its axis leans the pole towards the sun or away (24), and from that and the latitude follows how far the earth turns between noon
and sunset (25). Between sunrise and sunset the sine of the sun's height is summed up (21). What comes through the air
depends on the hours of bright sunshine (35); on a clear day that is three quarters, under an overcast sky one quarter.`)

var sunSymbols = weave.Formula{
	Equations: []string{
		"φ_rad = pi/180 * φ",
		"d_r = 1 + 0.033 * cos(2*pi*J / 365)",
		"δ = 0.409 * sin(2*pi*J / 365 - 1.39)",
		"ω_s = acos(-tan(φ_rad) * tan(δ))",
		"h = ω_s*sin(φ_rad)*sin(δ) + cos(φ_rad)*cos(δ)*sin(ω_s)",
		"R_a = 24*60/pi * G_sc * d_r * h",
		"N = 24/pi * ω_s",
		"R_s = (0.25 + 0.50 * n_sun/N) * R_a",
	},
	Where: []weave.Symbol{
		{Name: "φ_rad", Unit: "rad", What: "latitude, north positive (equation 22)"},
		{Name: "φ", Unit: "°", What: "the same in degrees"},
		{Name: "d_r", What: "inverse relative distance of earth and sun, squared (equation 23)"},
		{Name: "J", What: "day of the year, 1 on 1 January"},
		{Name: "δ", Unit: "rad", What: "declination: latitude at which the sun is overhead (equation 24)"},
		{Name: "ω_s", Unit: "rad", What: "hour angle of sunset; 0 if the sun never rises, π if it never sets (equation 25)"},
		{Name: "h", What: "height of the sun, its sine summed from noon to sunset (the bracket of equation 21)"},
		{Name: "R_a", Unit: "MJ/m²", What: "irradiation of level ground above the air, for the day (equation 21)"},
		{Name: "G_sc", Unit: "MJ/m²", What: "solar constant, 0.0820 in a minute"},
		{Name: "N", Unit: "h", What: "daylight, sunrise to sunset (equation 34)"},
		{Name: "R_s", Unit: "MJ/m²", What: "irradiation of level ground below the air (equation 35)"},
		{Name: "n_sun", Unit: "h", What: "hours of bright sunshine, N on a clear day and 0 under overcast"},
	},
}

const theRoofsMath = weave.Prose(`**The harvest.** Peak sun hours are an irradiation in disguise: so many hours of 1000 W/m². They multiply the watts on the
label, and everything that is lost multiplies what is left. Cells run above the air in proportion to the light on them, and
silicon loses about a third of a per cent of its power for each kelvin.`)

var roofSymbols = weave.Formula{
	Equations: []string{
		"t = H / G_test",
		"T_c = T_air + (T_nominal - 20) / 800 * G",
		"k_T = 1 + γ/100 * (T_c - 25)",
		"k_losses = (1 - L_1) * (1 - L_2) * (1 - L_n)",
		"E = P * t * k_T * k_losses",
	},
	Where: []weave.Symbol{
		{Name: "t", Unit: "h", What: "peak sun hours"},
		{Name: "H", Unit: "kWh/m²", What: "irradiation of the day in the plane of the panels; for a flat roof that of level ground"},
		{Name: "G_test", Unit: "kW/m²", What: "irradiance of the label, 1 kW/m²"},
		{Name: "T_c", Unit: "°C", What: "temperature of the cells"},
		{Name: "T_air", Unit: "°C", What: "temperature of the air round the panel"},
		{Name: "T_nominal", Unit: "°C", What: "nominal operating cell temperature (NOCT): of the cells at 800 W/m² and 20 °C"},
		{Name: "G", Unit: "W/m²", What: "irradiance on the panel"},
		{Name: "k_T", What: "factor for the temperature of the cells"},
		{Name: "γ", Unit: "%/K", What: "temperature coefficient of power, negative"},
		{Name: "k_losses", What: "what the losses leave, a factor for each of them"},
		{Name: "L_1", What: "the first loss"},
		{Name: "L_2", What: "the second, and so on"},
		{Name: "L_n", What: "the last"},
		{Name: "E", Unit: "Wh", What: "harvest of the day, direct current"},
		{Name: "P", Unit: "W", What: "power of all panels by their labels"},
	},
}

const theWiresMath = weave.Prose(`**Voltage and current.** The voltage of silicon rises as it cools, and a panel has its full open-circuit voltage in the first
light of a frosty morning, before any current flows. The rule (NEC 690.7(A), from memory) is the maker's coefficient at the
record low, and a table where there is none. Current goes with light, and light can be brighter than the label: at the edge of
a cloud, over snow, in thin air. So the greatest current counts as 125 % of the short-circuit current (690.8(A)), and conductors and
fuses, which bear it for hours, need 125 % of that again (690.8(B) and 690.9(B), from memory).`)

var wireSymbols = weave.Formula{
	Equations: []string{
		"V_cold = n * V_oc * (1 + β/100 * (T - 25))",
		"V_cold <= V_limit",
		"V_hot = n * (V_mp + β/100 * V_oc * (T_hot - 25))",
		"V_hot > V_bank",
		"I_mppt = η * P / V_bank",
		"I_pwm = m * I_sc",
		"I_required = 1.25 * 1.25 * m * I_sc",
		"I_back = (m - 1) * 1.25 * I_sc",
		"I_back <= I_label",
	},
	Where: []weave.Symbol{
		{Name: "V_cold", Unit: "V", What: "open-circuit voltage of a string on its coldest morning"},
		{Name: "n", What: "panels in series in a string"},
		{Name: "V_oc", Unit: "V", What: "open-circuit voltage of a panel at 25 °C"},
		{Name: "β", Unit: "%/K", What: "temperature coefficient of that voltage, negative"},
		{Name: "T", Unit: "°C", What: "coldest morning"},
		{Name: "V_limit", Unit: "V", What: "the most that the controller's input withstands"},
		{Name: "V_hot", Unit: "V", What: "voltage at maximum power of a string with hot cells, which lose as many volts as with the circuit open (common practice)"},
		{Name: "V_mp", Unit: "V", What: "voltage of a panel at maximum power and 25 °C"},
		{Name: "T_hot", Unit: "°C", What: "temperature of the cells in full sun on the hottest day"},
		{Name: "I_mppt", Unit: "A", What: "current into the bank through a controller that converts"},
		{Name: "η", What: "its efficiency"},
		{Name: "P", Unit: "W", What: "power of the array in full sun"},
		{Name: "V_bank", Unit: "V", What: "voltage of the bank while it is charged"},
		{Name: "I_pwm", Unit: "A", What: "current through a controller that only switches, at most"},
		{Name: "m", What: "strings in parallel"},
		{Name: "I_sc", Unit: "A", What: "short-circuit current of a string"},
		{Name: "I_required", Unit: "A", What: "what conductors and fuses behind the joint of the strings must carry"},
		{Name: "I_back", Unit: "A", What: "what the other strings feed into one that is shorted"},
		{Name: "I_label", Unit: "A", What: "maximum series fuse on the panel's label: above it each string needs a fuse"},
	},
}

const afterTheMath = weave.Prose(`What the equations leave out: the sun's place at an instant, clouds, tilt, and shade that moves. The
day is that of the sun's centre on a bare horizon without refraction, some minutes shorter than in an almanac, and the
declination is up to 1.2° off near the equinoxes. The harvest takes power as proportional to the light, which is a few per
cent too kind to a low sun: glass reflects it. What comes back into a shorted string is counted from the other strings only; a
controller that lets current out of the bank adds to it.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show flatroof -example day \
        -set latitude="52°" -set date="21 June"`)

const beforePrint = weave.Prose(`## What print says

Published results beside ours. A row that does not agree to the last digit says why. The factors for the cold are a table
that the library holds, so those rows show no more than which band a morning falls into: -15 °C and -16 °C are in
different ones.`)

const afterPrint = weave.Prose(`The tests of the solar package compare every cell of the two FAO tables from the equator to 64° north and south, every
band of the table for the cold, and more. The last table is another kind of check. The calculator takes the whole
short-circuit current for a PWM controller, which is an upper bound; the rows show by how much, against the current of a
solar cell worked out from its equation, warm and cold.`)

const practice = weave.Prose(`## What goes wrong in practice

- **One leaf, a third of a panel.** The cells of a panel are in series, in groups (often three) that diodes bridge. Shade on
  one cell takes its whole group. Panels in parallel lose no more than the shaded one; in series the diodes must work, or all
  suffer.
- **Unlike panels in series.** The weakest sets the current for all. In parallel the lowest voltage does the harm.
- **Hot panels near the bank's voltage.** A panel of 36 cells, called 12 V, has {{absorption.vmp}} at its best when its cells
  are at 60 °C, and a bank that is being filled stands at {{absorption.bank}}. Behind a long thin cable that charges slowly or
  not at all. The library compares at 25 °C, and with hot cells if it is
  told how hot they get.
- **The name of a panel.** A panel called 12 V has about 22 V open, one called 24 V may have 46 V (common practice). Only the
  open-circuit voltage on the label counts.
- **The fuse from the car.** A fuse in a string must break direct current at the cold voltage of the string, {{pair.cold}} in
  the example. A blade fuse made for 12 V is not rated for it.
- **The wrong order.** Most controllers want the bank connected first and disconnected last. Without it some let the
  panels' voltage through to what hangs on the output. Ask the maker.
- **The winter that was planned in June.** A roof that spills half its summer may not carry the fans through November. Work
  out the worst month of the trip, not the best.
- **Lithium in the frost.** The sun comes up on a bank at or below 0 °C. Its management must stop the charge, and the
  controller must bear that.`)

const cautions = `Panels in daylight cannot be switched off: their leads are live as soon as there is light, also when every switch is open
and the bank is away. Cover them with something opaque and make sure with a meter. Direct current draws an arc that does not go out
by itself: never part a plug or take out a fuse under load, but break the current first with a device that is rated for direct
current at that voltage. {{pair.cold}} of direct current, as in the example, can kill by touch. A roof is high, smooth, and wet in the
morning, and a panel in the wind is a sail: a fall kills as surely as a current. Keep off a roof that is not made to be walked
on. The rules here are those of the NEC of 2017, in part from memory; local codes, the makers' instructions and a licensed
electrician come before this book.`
