package inverter

import "example.com/drawbar/units/working"

// The rules and habits that findings and working rest on.
var (
	arithmetic = working.Source{Title: "energy balance", Provenance: working.Derived}

	nameplate = working.Source{Title: "the machine's own rating as given", Provenance: working.CommonPractice}

	vaOfWatts = working.Source{Title: "an inverter sold by its watts gives as many volt-amperes", Provenance: working.CommonPractice}

	motorStart = working.Source{Title: "a motor starts on three to ten times its running current; six where nothing is known", Provenance: working.CommonPractice}

	plainSum = working.Source{Title: "apparent powers added plainly, which never comes out too low", Provenance: working.Derived}

	surgeHabit = working.Source{Title: "a surge rating holds for the seconds that its maker states", Provenance: working.CommonPractice}

	idleHabit = working.Source{Title: "own use counts for every hour that an inverter is on", Provenance: working.CommonPractice}

	lowestVoltage = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.8(A)(4), 706.20(A)(3)", Provenance: working.Read}

	necMargin = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.8(B)(1), 706.21(B)", Provenance: working.Read}

	necContinuous = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "210.20, 215.3: 125 % of a continuous load, so 80 % of a rating", Provenance: working.Read}

	necNeutral = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "551.54(C)", Provenance: working.Read}

	necGenerator = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "250.34(B) and (C), 551.54(C); 250.34(A) from memory", Provenance: working.Read}

	necTransfer = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "551.30(B), 551.33", Provenance: working.Read}

	monoxide = working.Source{Body: "US Consumer Product Safety Commission", Title: "advice on portable generators: outside, 20 ft from every opening", Provenance: working.Memory}

	necEarth = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "250.4(A)(5)", Provenance: working.Memory}

	classA = working.Source{Title: "class A ground-fault protection trips at 4 mA to 6 mA", Provenance: working.Memory}

	relayHabit = working.Source{Title: "a path carries no more than its weakest part", Provenance: working.CommonPractice}

	failoverHabit = working.Source{Title: "an automatic transfer tells nobody", Provenance: working.CommonPractice}

	asGiven = working.Source{Title: "as given", Provenance: working.CommonPractice}

	currentDivision = working.Source{Title: "Ohm's law", Provenance: working.Derived}

	softStartHabit = working.Source{Title: "share left by a soft starter, to be given by its maker; 0.3 to 0.5 is usual", Provenance: working.CommonPractice}
)
