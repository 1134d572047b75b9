# Keeps headers in step with their layouts. Before this file is included,
#
#     PANEL_HEADERS := kiln.h
#     kiln.h: PANEL_LAYOUT := kiln.panel.json
#
# says which header comes from which layout. A header is made anew whenever its layout, one of its fonts or pictures, or
# Panelproof itself is newer, and the build stops where the layout has a fault. Where CI is `true` nothing is written; the
# build stops if a header on disk is not what its layout gives now.

PANELPROOF ?= panelproof

ifeq ($(CI),true)

.PHONY: $(PANEL_HEADERS:=.in-step)
$(PANEL_HEADERS:=.in-step): %.in-step:
	$(PANELPROOF) export $(PANEL_LAYOUT) --verify $*
$(foreach header,$(PANEL_HEADERS),$(eval $(header): | $(header).in-step))

else

$(PANEL_HEADERS): $(shell command -v $(PANELPROOF))
	$(PANELPROOF) export $(PANEL_LAYOUT) -o $@ --depends $(notdir $@).d
-include $(notdir $(PANEL_HEADERS:=.d))

endif
