package protection

import "example.com/drawbar/book/weave"

const mathematics = weave.Prose(`## The mathematics

The device lies between the load and the wire. For a load of three hours or more it must have a quarter in hand
(NEC 210.20(A) and 215.3, from memory). An inverter's load is what it gives, over what it makes of each watt it takes, at the
lowest voltage it still works at. At the top is the limit of the rule set, which is not always the ampacity, and the rating
of the weakest part of the path.

The short is Ohm's law with everything in it: the bank inside, the links, and the run there and back. Batteries one after the
other add their voltages and their resistances; side by side they divide the resistance, and the short grows with each.

What a short does to the conductor in seconds is one line. All its heat stays in the metal, so what is let through, in
ampere squared seconds, is held against what the metal bears from the temperature it had to the one that destroys its insulation.
Current and area both count with their square.`)

var symbols = weave.Formula{
	Equations: []string{
		"I_load = P / (η * V_low)",
		"I_needed = k_continuous * I_load",
		"I_needed <= I_device",
		"I_device <= min(I_limit, I_part)",
		"E = n_series * E_1",
		"R_source = n_series / n_parallel * R_1 + R_links",
		"I_k = E / (R_source + r * 2*L)",
		"I_near <= I_break",
		"I_far > I_device",
		"pow(I_far, 2) * t <= pow(k * S, 2)",
		"k = 226 * sqrt(ln((234.5 + T_final) / (234.5 + T_initial)))",
	},
	Where: []weave.Symbol{
		{Name: "I_load", Unit: "A", What: "greatest current of the load, here of an inverter"},
		{Name: "P", Unit: "W", What: "power that the inverter gives"},
		{Name: "η", What: "its efficiency"},
		{Name: "V_low", Unit: "V", What: "lowest voltage it works at"},
		{Name: "I_needed", Unit: "A", What: "what the device must carry"},
		{Name: "k_continuous", What: "1.25 for a load of three hours or more, else 1"},
		{Name: "I_device", Unit: "A", What: "rating of the fuse or breaker"},
		{Name: "I_limit", Unit: "A", What: "greatest device that the rule set allows"},
		{Name: "I_part", Unit: "A", What: "least rating in the path: switch, shunt, bus bar, relay, terminal"},
		{Name: "E", Unit: "V", What: "open-circuit voltage of the bank"},
		{Name: "n_series", What: "batteries one after the other"},
		{Name: "E_1", Unit: "V", What: "open-circuit voltage of one battery"},
		{Name: "R_source", Unit: "Ω", What: "resistance of the bank inside, with its links"},
		{Name: "n_parallel", What: "strings side by side"},
		{Name: "R_1", Unit: "Ω", What: "resistance of one battery"},
		{Name: "R_links", Unit: "Ω", What: "resistance of links and posts"},
		{Name: "I_k", Unit: "A", What: "current of a bolted short at the end of a length"},
		{Name: "r", Unit: "Ω/m", What: "resistance of a metre of one conductor"},
		{Name: "L", Unit: "m", What: "one-way length from the source to the short"},
		{Name: "I_near", Unit: "A", What: "I_k at the place of the device, conductor cold"},
		{Name: "I_break", Unit: "A", What: "interrupting rating: the greatest current the device can break"},
		{Name: "I_far", Unit: "A", What: "I_k at the far end of the run, conductor warm"},
		{Name: "t", Unit: "s", What: "time until the device opens, by its curve; not above 5 s"},
		{Name: "k", Unit: "A·√s/mm²", What: "factor of copper and its insulation; by a table where there is one"},
		{Name: "S", Unit: "mm²", What: "metal area of the conductor"},
		{Name: "T_final", Unit: "°C", What: "what the insulation bears for seconds: 160 °C thermoplastic, 250 °C cross-linked"},
		{Name: "T_initial", Unit: "°C", What: "metal before the short, as hot as it may be in use"},
	},
}
