package wire
type Conduit uint8
type ACMethod uint8
type LegSupply uint8
