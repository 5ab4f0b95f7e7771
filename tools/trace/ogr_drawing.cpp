// SPDX-License-Identifier: Apache-2.0
#include <cpl_conv.h>
#include <cpl_error.h>
#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <iterator>
#include <memory>

#include "tools/trace/drawn_things.hpp"

namespace quoin::tools {
namespace {

/// Curves are stroked in steps this small, degrees; what is not needed is left out later, by how
/// far the chords are from the curve.
constexpr const char* stroke_step = "0.5";

using Kind = DrawnThing::Kind;

std::string points_of(const OGRLineString& line) {
  std::string text;
  for (int k = 0; k < line.getNumPoints(); ++k)
    fmt::format_to(std::back_inserter(text), "{}{} {}", k == 0 ? "" : " ", line.getX(k),
                   line.getY(k));
  return text;
}

/// A layer, a kind and what it is on one line: names hold no tabs.
std::string head(std::string layer, Kind kind, std::string what) {
  for (std::string* name : {&layer, &what})
    std::replace_if(
        name->begin(), name->end(), [](char c) { return c == '\t' || c == '\n' || c == '\r'; },
        ' ');
  return fmt::format("{}\t{}\t{}\t", layer, static_cast<int>(kind), what);
}

void add(const OGRGeometry& geometry, const std::string& layer, const std::string& what,
         std::string& text) {
  switch (wkbFlatten(geometry.getGeometryType())) {
    case wkbLineString:
      text += head(layer, Kind::line, what) + points_of(*geometry.toLineString()) + '\n';
      return;
    case wkbPolygon: {
      const OGRPolygon& polygon = *geometry.toPolygon();
      if (polygon.getExteriorRing() == nullptr) return;
      text += head(layer, Kind::area, what) + points_of(*polygon.getExteriorRing());
      for (int k = 0; k < polygon.getNumInteriorRings(); ++k)
        text += ';' + points_of(*polygon.getInteriorRing(k));
      text += '\n';
      return;
    }
    case wkbMultiLineString:
    case wkbMultiPolygon:
    case wkbGeometryCollection:
      for (const OGRGeometry* part : *geometry.toGeometryCollection())
        add(*part, layer, what, text);
      return;
    default:
      text += head(layer, Kind::skipped, what) + '\n';
  }
}

std::string field_of(const OGRFeature& feature, const char* name) {
  const int index = feature.GetFieldIndex(name);
  return index < 0 ? "" : feature.GetFieldAsString(index);
}

bool is_text(const std::string& what) {
  return what.find("Text") != std::string::npos || what.find("Dimension") != std::string::npos ||
         what.find("Leader") != std::string::npos || what.find("Point") != std::string::npos;
}

/// The last class of a thing's list of classes: "AcDbEntity:AcDbLine".
std::string last_class(const std::string& classes) {
  const std::size_t colon = classes.rfind(':');
  return colon == std::string::npos ? classes : classes.substr(colon + 1);
}

std::string things_of(OGRLayer& entities) {
  std::string text;
  for (const auto& feature : entities) {
    const std::string layer = field_of(*feature, "Layer");
    const std::string classes = field_of(*feature, "SubClasses"), what = last_class(classes);
    const OGRGeometry* geometry = feature->GetGeometryRef();
    if (is_text(classes)) {
      text += head(layer, Kind::skipped, what) + '\n';
    } else if (geometry == nullptr || geometry->IsEmpty()) {
      text += head(layer, Kind::broken, what) + '\n';
    } else {
      const std::unique_ptr<OGRGeometry> straight(geometry->getLinearGeometry());
      add(*straight, layer, what, text);
    }
  }
  return text;
}

}  // namespace
}  // namespace quoin::tools

bool quoin_read_drawing(const std::string& file, std::string& text) noexcept {
  try {
    CPLPushErrorHandler(CPLQuietErrorHandler);  // what is wrong is said in our words
    GDALAllRegister();
    CPLSetConfigOption("OGR_ARC_STEPSIZE", quoin::tools::stroke_step);
    const char* const drivers[] = {"DXF", nullptr};
    const std::unique_ptr<GDALDataset, void (*)(GDALDataset*)> drawing(
        GDALDataset::Open(file.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, drivers),
        [](GDALDataset* open) {
          if (open != nullptr) GDALClose(open);
        });
    OGRLayer* entities = drawing ? drawing->GetLayer(0) : nullptr;
    if (entities == nullptr) {
      text = CPLGetLastErrorMsg();
      if (text.empty()) text = "this is no DXF drawing";
    } else {
      text = quoin::tools::things_of(*entities);
    }
    CPLPopErrorHandler();
    return entities != nullptr;
  } catch (const std::exception& error) {
    text = error.what();
    return false;
  }
}
