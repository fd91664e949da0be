package wire_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// checkWords reads each value of an enumeration back from its text.
func checkWords[E interface {
	~uint8
	comparable
	fmt.Stringer
	encoding.TextMarshaler
}](t *testing.T, read func(*E) encoding.TextUnmarshaler, words ...string) {
	t.Helper()
	for i, word := range words {
		e, back := E(i), E(99)
		text, err := e.MarshalText()
		if err != nil || string(text) != word || e.String() != word {
			t.Errorf("%T %d: %q, %v, want %q", e, i, text, err, word)
		}
		if err := read(&back).UnmarshalText(text); err != nil || back != e {
			t.Errorf("%T %q reads back as %v, %v", e, text, back, err)
		}
	}
	none := E(len(words))
	var limits *units.RangeError
	if text, err := none.MarshalText(); !errors.As(err, &limits) || limits.Allowed.String() == "" || none.String() != "unknown" {
		t.Errorf("%T without a word: %q, %v, %v", none, text, err, none)
	}
	var parse *units.ParseError
	kept := E(1)
	if err := read(&kept).UnmarshalText([]byte("nonsense")); !errors.As(err, &parse) || kept != 1 {
		t.Errorf("%T of nonsense: %v, %v", kept, kept, err)
	}
}

func TestEnumerations(t *testing.T) {
	checkWords(t, func(s *wire.Strand) encoding.TextUnmarshaler { return s }, "stranded", "solid", "flexible")
	checkWords(t, func(b *wire.Basis) encoding.TextUnmarshaler { return b },
		"copper and geometry", "IEC 60228", "resistivity given", "resistance stated",
		"metal and geometry", "NEC Table 8", "NBS Handbook 100")
	checkWords(t, func(m *wire.Metal) encoding.TextUnmarshaler { return m }, "copper", "aluminium", "copper-clad aluminium")
	checkWords(t, func(c *wire.Conduit) encoding.TextUnmarshaler { return c }, "PVC", "aluminium", "steel")
	checkWords(t, func(m *wire.ACMethod) encoding.TextUnmarshaler { return m }, "exact", "approximate")
	checkWords(t, func(s *wire.LegSupply) encoding.TextUnmarshaler { return s },
		"120/240 V split phase", "120/208 V network", "one hot for both legs")
	checkWords(t, func(g *wire.Governs) encoding.TextUnmarshaler { return g }, "insulation", "terminals", "device table")
	checkWords(t, func(l *wire.LimitRule) encoding.TextUnmarshaler { return l },
		"ampacity", "next standard rating", "small conductor", "150 % of ampacity")
}

func TestProtectionEnumerations(t *testing.T) {
	checkWords(t, func(k *wire.DeviceKind) encoding.TextUnmarshaler { return k }, "any device", "fuse", "breaker")
	checkWords(t, func(k *wire.CordType) encoding.TextUnmarshaler { return k }, "flexible cord", "heater cord", "portable cable")
	checkWords(t, func(c *wire.Core) encoding.TextUnmarshaler { return c }, "not given", "PVC 70 °C core", "PVC 90 °C core",
		"XLPE 90 °C core", "rubber 60 °C core", "rubber 85 °C core", "silicone 180 °C core", "separate PVC 70 °C", "separate thermosetting 90 °C")
	checkWords(t, func(m *wire.Metal) encoding.TextUnmarshaler { return m }, "copper", "aluminium", "copper-clad aluminium")
}

// TestRunAsJSON: a run is text that a person can write.
func TestRunAsJSON(t *testing.T) {
	want := lamp()
	want.Conductor.Strand = wire.Solid
	data, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got wire.Run
	if err := json.Unmarshal(data, &got); err != nil || got != want {
		t.Errorf("%s reads back as %+v, %v", data, got, err)
	}
}
