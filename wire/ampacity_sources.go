package wire

import "example.com/drawbar/units/working"

// The sources of ampacities, limits and places of devices, by rule set where
// editions differ.
var (
	nec31016 = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1", Provenance: working.Read}
	nec31016Aluminium = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(16), aluminium or copper-clad aluminium, read through IRC 2018 Table E3705.1", Provenance: working.Read}
	necFine = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2011 and later",
		Place: "Table 310.15(B)(16), 18 and 16 AWG at 90 °C", Provenance: working.Memory}
	nec2023Table = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2023",
		Place: "Table 310.16, taken to be Table 310.15(B)(16) of 2017 unchanged", Provenance: working.Memory}
	nec2008Table = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "1990s to 2008",
		Place: "Table 310.16, in a public reprint", Provenance: working.Read}
	necAmbient = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(2)(a), 30 °C base, taken to be 310.15(B)(1) of 2020, read through IRC 2021 Table E3705.2", Provenance: working.Memory}
	nec2023Ambient = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2023",
		Place: "Table 310.15(B)(1)(1), 30 °C base, read as 310.15(B)(1) of 2020 through IRC 2021 Table E3705.2", Provenance: working.Read}
	nec2008Ambient = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "correction factors below Table 310.16, 30 °C base, with 61-70 and 71-80 °C as one band each", Provenance: working.Memory}
	necBundle = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(3)(a), taken to be that of 2014, which was read; later 310.15(C)(1)", Provenance: working.Memory}
	nec2023Bundle = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2023",
		Place: "Table 310.15(C)(1), taken to be 310.15(B)(3)(a) of 2014, which was read", Provenance: working.Memory}
	nec2008Bundle = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "Table 310.15(B)(2)(a), taken to be that of 2014", Provenance: working.Memory}
	necTerminals = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "110.14(C)", Provenance: working.Memory}
	necParallel = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "310.10(H), 310.10(G) from 2020: conductors in parallel from 1/0 AWG up", Provenance: working.Memory}
	necSmall = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 to 2023",
		Place: "240.4(D), as public summaries give it", Provenance: working.Read}
	nec2008Small = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "240.4(D), taken to be that of 2017", Provenance: working.Memory}
	necNextUp = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "240.4(B)", Provenance: working.Memory}
	necRatings = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "240.6(A), from public statements of it", Provenance: working.Read}
	nec2023Ratings = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2023",
		Place: "Table 240.6(A), from public statements of it", Provenance: working.Read}
	nec2008Ratings = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "240.6(A), taken to be that of 2017", Provenance: working.Memory}
	necContinuous = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "210.20(A), 215.3: 125 % of a load of three hours or more", Provenance: working.Memory}
	continuousPractice = working.Source{Title: "125 % of a load of three hours or more, for device and conductor, as the NEC has it",
		Provenance: working.CommonPractice}
	necConductor = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "210.19(A), 215.2(A): conductor of 125 % of a continuous load, before correction", Provenance: working.Memory}
	necTaps = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "240.21", Provenance: working.Memory}
	rvTable = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "Table 552.10(E)(1), park trailers, low voltage", Provenance: working.Memory}
	rvPlace = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2020",
		Place: "552.10(E)(4), as an article on it says: 18 in from the source", Provenance: working.Read}
	boatTable = working.Source{Body: "US Coast Guard", Title: "33 CFR", Edition: "2001",
		Place: "183.425 Table 5, free air", Provenance: working.Read}
	boatEngine = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.425 Table 5, note 1: inside engine spaces, 50 °C assumed", Provenance: working.Memory}
	boatBundle = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.425 Table 5, note 2, by 183.435 for circuits of 50 V and more", Provenance: working.Read}
	boatThin = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.425(d) to (f): least sizes, in a sheath and out of it", Provenance: working.Read}
	boatPlace = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.455(b): 7 in from the source, 40 in if sheathed or enclosed", Provenance: working.Read}
	boatBattery = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.460: 72 in along a conductor on the battery post", Provenance: working.Memory}
	boatDevice = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.455(c)(1): 150 % of Table 5 under 50 V", Provenance: working.Read}
	boatDevice50 = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.455(c)(2): Table 5 at 50 V and more, or the next rating up to 150 % of it", Provenance: working.Read}
	bundlePhysics = working.Source{Title: "conductors together warm each other at any voltage", Provenance: working.CommonPractice}
	fuseSpeed     = working.Source{Title: "a device opens within seconds at several times its rating, at twice it in minutes", Provenance: working.CommonPractice}
	thickPractice = working.Source{Title: "single cables thicker than the RV table by the free-air table of 33 CFR 183.425",
		Provenance: working.CommonPractice}
)

// ofEdition returns the source for the edition of r.
func (r RuleSet) ofEdition(to2008, to2017, to2023 working.Source) working.Source {
	switch r {
	case NEC2008:
		return to2008
	case NEC2023:
		return to2023
	}
	return to2017
}

// ratingSource returns the list of standard ratings of r.
func (r RuleSet) ratingSource() working.Source {
	return r.ofEdition(nec2008Ratings, necRatings, nec2023Ratings)
}
