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

/// What a thing is known by.
struct Name {
  std::string layer;
  std::string what;
  std::string handle;
};

/// A name and a kind on one line: names hold no tabs.
std::string head(Name of, Kind kind) {
  for (std::string* name : {&of.layer, &of.what, &of.handle})
    std::replace_if(
        name->begin(), name->end(), [](char c) { return c == '\t' || c == '\n' || c == '\r'; },
        ' ');
  return fmt::format("{}\t{}\t{}\t{}\t", of.layer, static_cast<int>(kind), of.what, of.handle);
}

void add(const OGRGeometry& geometry, const Name& name, std::string& text) {
  switch (wkbFlatten(geometry.getGeometryType())) {
    case wkbLineString:
      text += head(name, Kind::line) + points_of(*geometry.toLineString()) + '\n';
      return;
    case wkbPolygon: {
      const OGRPolygon& polygon = *geometry.toPolygon();
      if (polygon.getExteriorRing() == nullptr) return;
      text += head(name, Kind::area) + points_of(*polygon.getExteriorRing());
      for (int k = 0; k < polygon.getNumInteriorRings(); ++k)
        text += ';' + points_of(*polygon.getInteriorRing(k));
      text += '\n';
      return;
    }
    case wkbMultiLineString:
    case wkbMultiPolygon:
    case wkbGeometryCollection:
      for (const OGRGeometry* part : *geometry.toGeometryCollection()) add(*part, name, text);
      return;
    default:
      text += head(name, Kind::skipped) + '\n';
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
    const std::string classes = field_of(*feature, "SubClasses");
    const Name name{field_of(*feature, "Layer"), last_class(classes),
                    field_of(*feature, "EntityHandle")};
    const OGRGeometry* geometry = feature->GetGeometryRef();
    if (is_text(classes)) {
      text += head(name, Kind::skipped) + '\n';
    } else if (geometry == nullptr || geometry->IsEmpty()) {
      text += head(name, Kind::broken) + '\n';
    } else {
      const std::unique_ptr<OGRGeometry> straight(geometry->getLinearGeometry());
      add(*straight, name, text);
    }
  }
  return text;
}

}  // namespace
}  // namespace quoin::tools

bool quoin_read_drawing(const std::string& file, bool is_utf8, std::string& text) noexcept {
  try {
    CPLPushErrorHandler(CPLQuietErrorHandler);  // what is wrong is said in our words
    GDALAllRegister();
    CPLSetConfigOption("DXF_ENCODING", is_utf8 ? "UTF-8" : nullptr);
    // What a block holds lies on its own layers.
    CPLSetConfigOption("DXF_MERGE_BLOCK_GEOMETRIES", "FALSE");
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
