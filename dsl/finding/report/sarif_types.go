package report

// The parts of SARIF 2.1.0 (OASIS Standard, 27 March 2020) that are written, by
// the names of the standard. The numbers are those of its sections.
type (
	sarifLog struct { // 3.13
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct { // 3.14
		Tool        sarifTool                `json:"tool"`
		Invocations []sarifInvocation        `json:"invocations"`
		Bases       map[string]sarifArtifact `json:"originalUriBaseIds,omitempty"`
		ColumnKind  string                   `json:"columnKind"`
		Results     []sarifResult            `json:"results"`
	}
	sarifTool struct { // 3.18
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct { // 3.19
		Name          string            `json:"name"`
		Version       string            `json:"version,omitempty"`
		Rules         []sarifDescriptor `json:"rules"`
		Notifications []sarifDescriptor `json:"notifications,omitempty"`
	}
	sarifDescriptor struct { // 3.49
		ID            string         `json:"id"`
		Short         sarifMessage   `json:"shortDescription"`
		Full          *sarifMessage  `json:"fullDescription,omitempty"`
		HelpURI       string         `json:"helpUri,omitempty"`
		Help          *sarifMessage  `json:"help,omitempty"`
		Configuration *sarifLevel    `json:"defaultConfiguration,omitempty"`
		Properties    map[string]any `json:"properties,omitempty"`
	}
	sarifLevel struct { // 3.50
		Level string `json:"level"`
	}
	sarifMessage struct { // 3.11
		Text string `json:"text"`
	}
	sarifInvocation struct { // 3.20
		Successful    bool                `json:"executionSuccessful"`
		Notifications []sarifNotification `json:"toolExecutionNotifications,omitempty"`
	}
	sarifNotification struct { // 3.58
		Descriptor sarifReference  `json:"descriptor"`
		Level      string          `json:"level"`
		Message    sarifMessage    `json:"message"`
		Locations  []sarifLocation `json:"locations,omitempty"`
	}
	sarifReference struct { // 3.52
		ID    string `json:"id"`
		Index int    `json:"index"`
	}
	sarifResult struct { // 3.27
		RuleID       string             `json:"ruleId"`
		RuleIndex    int                `json:"ruleIndex"`
		Kind         string             `json:"kind,omitempty"`
		Level        string             `json:"level"`
		Message      sarifMessage       `json:"message"`
		Locations    []sarifLocation    `json:"locations,omitempty"`
		Related      []sarifLocation    `json:"relatedLocations,omitempty"`
		Prints       map[string]string  `json:"partialFingerprints"`
		Fixes        []sarifFix         `json:"fixes,omitempty"`
		Suppressions []sarifSuppression `json:"suppressions,omitempty"`
	}
	sarifLocation struct { // 3.28
		ID       *int          `json:"id,omitempty"`
		Physical sarifPhysical `json:"physicalLocation"`
		Message  *sarifMessage `json:"message,omitempty"`
	}
	sarifPhysical struct { // 3.29
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct { // 3.4
		URI         string        `json:"uri,omitempty"`
		Base        string        `json:"uriBaseId,omitempty"`
		Description *sarifMessage `json:"description,omitempty"`
	}
	sarifRegion struct { // 3.30
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"`
	}
	sarifFix struct { // 3.55
		Description *sarifMessage  `json:"description,omitempty"`
		Changes     []sarifChange  `json:"artifactChanges"`
		Properties  map[string]any `json:"properties"`
	}
	sarifChange struct { // 3.56
		Artifact     sarifArtifact      `json:"artifactLocation"`
		Replacements []sarifReplacement `json:"replacements"`
	}
	sarifReplacement struct { // 3.57
		Deleted  sarifRegion   `json:"deletedRegion"`
		Inserted *sarifContent `json:"insertedContent,omitempty"`
	}
	sarifContent struct { // 3.3
		Text string `json:"text"`
	}
	sarifSuppression struct { // 3.35
		Kind          string         `json:"kind"`
		Justification string         `json:"justification,omitempty"`
		Location      *sarifLocation `json:"location,omitempty"`
	}
)
