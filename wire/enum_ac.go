package wire

// The words of the enumerations of conductors and of alternating current, each
// at the place of its number.
var (
	metalWords   = []string{"copper", "aluminium", "copper-clad aluminium"}
	conduitWords = []string{"PVC", "aluminium", "steel"}
	methodWords  = []string{"exact", "approximate"}
	supplyWords  = []string{"120/240 V split phase", "120/208 V network", "one hot for both legs"}
)

// String returns "copper", "aluminium" or "copper-clad aluminium".
func (m Metal) String() string { return wordOf(metalWords, uint8(m)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (m Metal) MarshalText() ([]byte, error) {
	return wordText("wire.Metal.MarshalText", metalWords, uint8(m))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves m alone.
func (m *Metal) UnmarshalText(text []byte) error {
	i, err := readWord("metal", metalWords, text)
	if err == nil {
		*m = Metal(i)
	}
	return err
}

// String returns "PVC", "aluminium" or "steel".
func (c Conduit) String() string { return wordOf(conduitWords, uint8(c)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (c Conduit) MarshalText() ([]byte, error) {
	return wordText("wire.Conduit.MarshalText", conduitWords, uint8(c))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves c alone.
func (c *Conduit) UnmarshalText(text []byte) error {
	i, err := readWord("conduit", conduitWords, text)
	if err == nil {
		*c = Conduit(i)
	}
	return err
}

// String returns "exact" or "approximate".
func (m ACMethod) String() string { return wordOf(methodWords, uint8(m)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (m ACMethod) MarshalText() ([]byte, error) {
	return wordText("wire.ACMethod.MarshalText", methodWords, uint8(m))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves m alone.
func (m *ACMethod) UnmarshalText(text []byte) error {
	i, err := readWord("method", methodWords, text)
	if err == nil {
		*m = ACMethod(i)
	}
	return err
}

// String returns "120/240 V split phase", "120/208 V network" or "one hot for
// both legs".
func (s LegSupply) String() string { return wordOf(supplyWords, uint8(s)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (s LegSupply) MarshalText() ([]byte, error) {
	return wordText("wire.LegSupply.MarshalText", supplyWords, uint8(s))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves s alone.
func (s *LegSupply) UnmarshalText(text []byte) error {
	i, err := readWord("supply of two legs", supplyWords, text)
	if err == nil {
		*s = LegSupply(i)
	}
	return err
}
