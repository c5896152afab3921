/* report/oil_units_json.c: how are pump packs and breathers written, by
 * docs/schema/oil.schema.json?
 */
#include "report/oil_grid.h"

static void element_case(ts_json *json, const ts_pack_case *one)
{
    ts_json_object(json);
    ts_json_number_at(json, "volumetric_efficiency", one->eta_v);
    ts_json_number_at(json, "able", one->able);
    ts_json_number_at(json, "need", one->need);
    ts_json_number_at(json, "torque", one->T);
    ts_json_number_at(json, "power", one->P);
    ts_json_end(json, '}');
}

static void elements(ts_json *json, const ts_pack *pack)
{
    ts_json_key(json, "elements");
    ts_json_array(json);
    for (uint32_t e = 0; e < pack->element_count; e++) {
        const ts_pack_element *one = &pack->elements[e];
        ts_json_object(json);
        ts_json_string_at(json, "name", one->name);
        if (one->sump != NULL)
            ts_json_string_at(json, "sump", one->sump->name);
        ts_json_number_at(json, "displacement", one->V_g);
        ts_json_number_at(json, "width", one->b);
        ts_json_bool_at(json, "width_told", one->given);
        if (one->told != NULL && ts_pick_known(one->told->chip_plug))
            ts_json_bool_at(json, "chip_plug", one->told->chip_plug.value == TS_YES);
        ts_json_key(json, "conditions");
        ts_json_array(json);
        for (uint32_t row = 0; row < pack->rows; row++)
            element_case(json, &pack->cases[(size_t)row * TS_PACK_ELEMENTS + e]);
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void states(ts_json *json, const ts_pack *pack, const ts_drive *drive)
{
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (uint32_t row = 0; row < pack->rows; row++) {
        const ts_pack_state *one = &pack->states[row];
        ts_json_object(json);
        if (row < drive->condition_count)
            ts_json_string_at(json, "condition", drive->conditions[row].name);
        else
            ts_json_bool_at(json, "windmill", true);
        ts_json_number_at(json, "speed", one->n);
        ts_json_number_at(json, "oil", one->theta);
        ts_json_number_at(json, "pressure", one->p);
        ts_json_number_at(json, "fed", one->Q);
        ts_json_number_at(json, "over_valve", one->spare);
        ts_json_number_at(json, "torque", one->T);
        ts_json_number_at(json, "power", one->P);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void attitudes(ts_json *json, const ts_pack *pack)
{
    ts_json_key(json, "attitudes");
    ts_json_array(json);
    for (uint32_t a = 0; a < ts_pack_attitudes(pack); a++) {
        const ts_attitude *told = a > 0 ? &pack->told->attitudes[a - 1] : NULL;
        const ts_pack_dip *dips = &pack->dips[(size_t)a * TS_PACK_ELEMENTS];
        ts_json_object(json);
        if (told != NULL)
            ts_json_string_at(json, "name", told->name);
        ts_json_number_at(json, "pitch", told == NULL ? 0.0 : told->pitch.value);
        ts_json_number_at(json, "roll", told == NULL ? 0.0 : told->roll.value);
        ts_json_key(json, "pick_ups");
        ts_json_array(json);
        for (uint32_t e = 1; e < pack->element_count; e++) {
            ts_json_object(json);
            ts_json_string_at(json, "sump", pack->elements[e].sump->name);
            ts_json_string_at(json, "name", pack->elements[e].name);
            ts_json_number_at(json, "cover", dips[e].cover);
            ts_json_bool_at(json, "draws", dips[e].covered);
            ts_json_end(json, '}');
        }
        ts_json_end(json, ']');
        ts_json_key(json, "sumps");
        ts_json_array(json);
        for (size_t i = 0; i < pack->told->sump_count; i++) {
            ts_json_object(json);
            ts_json_string_at(json, "name", pack->told->sumps[i].name);
            ts_json_number_at(json, "taken", pack->taken[(size_t)a * pack->told->sump_count + i]);
            ts_json_end(json, '}');
        }
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void pack_object(ts_json *json, const ts_pack *pack, const ts_drive *drive)
{
    ts_json_object(json);
    ts_json_string_at(json, "accessory", drive->accessories[pack->accessory].name);
    if (pack->missing != NULL)
        ts_json_string_at(json, "because", pack->missing);
    else {
        ts_json_number_at(json, "tip_diameter", pack->d_a);
        ts_json_number_at(json, "tip_speed", pack->v_a);
        ts_json_number_at(json, "length", pack->length);
        elements(json, pack);
        states(json, pack, drive);
        attitudes(json, pack);
    }
    ts_json_end(json, '}');
}

static void breather_object(ts_json *json, const ts_breather *breather, const ts_drive *drive)
{
    ts_json_object(json);
    ts_json_string_at(json, "accessory", drive->accessories[breather->accessory].name);
    if (breather->missing != NULL) {
        ts_json_string_at(json, "because", breather->missing);
        ts_json_end(json, '}');
        return;
    }
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (size_t c = 0; c < drive->condition_count; c++) {
        const ts_breather_case *one = &breather->cases[c];
        ts_json_object(json);
        ts_json_string_at(json, "condition", drive->conditions[c].name);
        ts_json_number_at(json, "speed", one->n);
        ts_json_number_at(json, "air", one->Q);
        ts_json_number_at(json, "largest_drop", one->d_cut);
        ts_json_number_at(json, "reynolds", one->Re);
        ts_json_number_at(json, "pressure_drop", one->dp);
        ts_json_number_at(json, "torque", one->T);
        ts_json_number_at(json, "power", one->P);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

void ts_oil_units_json(ts_json *json, const ts_oil_units *units)
{
    if (units->pack_count > 0) {
        ts_json_key(json, "pumps");
        ts_json_array(json);
        for (uint32_t i = 0; i < units->pack_count; i++)
            pack_object(json, &units->packs[i], units->drive);
        ts_json_end(json, ']');
    }
    if (units->breather_count > 0) {
        ts_json_key(json, "breathers");
        ts_json_array(json);
        for (uint32_t i = 0; i < units->breather_count; i++)
            breather_object(json, &units->breathers[i], units->drive);
        ts_json_end(json, ']');
    }
}
