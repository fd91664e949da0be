package wire

// The words of the kinds of cords, devices and cores, each at the place of its
// number.
var (
	cordWords   = []string{"flexible cord", "heater cord", "portable cable"}
	deviceWords = []string{"any device", "fuse", "breaker"}
	coreWords   = []string{"not given", "PVC 70 °C core", "PVC 90 °C core", "XLPE 90 °C core", "rubber 60 °C core",
		"rubber 85 °C core", "silicone 180 °C core", "separate PVC 70 °C", "separate thermosetting 90 °C"}
)

// String returns "any device", "fuse" or "breaker".
func (k DeviceKind) String() string { return wordOf(deviceWords, uint8(k)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (k DeviceKind) MarshalText() ([]byte, error) {
	return wordText("wire.DeviceKind.MarshalText", deviceWords, uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *DeviceKind) UnmarshalText(text []byte) error {
	i, err := readWord("kind of device", deviceWords, text)
	if err == nil {
		*k = DeviceKind(i)
	}
	return err
}

// String returns "PVC 70 °C core" and the like, and "not given" for the zero
// value.
func (c Core) String() string { return wordOf(coreWords, uint8(c)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (c Core) MarshalText() ([]byte, error) {
	return wordText("wire.Core.MarshalText", coreWords, uint8(c))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves c alone.
func (c *Core) UnmarshalText(text []byte) error {
	i, err := readWord("core", coreWords, text)
	if err == nil {
		*c = Core(i)
	}
	return err
}

// String returns "flexible cord", "heater cord" or "portable cable".
func (k CordType) String() string { return wordOf(cordWords, uint8(k)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (k CordType) MarshalText() ([]byte, error) {
	return wordText("wire.CordType.MarshalText", cordWords, uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *CordType) UnmarshalText(text []byte) error {
	i, err := readWord("type of cord", cordWords, text)
	if err == nil {
		*k = CordType(i)
	}
	return err
}
